import { verifyForOperator } from "#web/trails-for-operator";
import { write } from "#web/write";

export const dynamic = "force-dynamic";

export const POST = write(verifyForOperator);
