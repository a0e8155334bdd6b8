import { importForOperator } from "#web/import-for-operator";
import { write } from "#web/write";

export const dynamic = "force-dynamic";

export const POST = write(importForOperator);
