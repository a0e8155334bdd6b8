import { takeLookUp } from "#web/take-look-up";
import { write } from "#web/write";

export const dynamic = "force-dynamic";

export const POST = write(takeLookUp);
