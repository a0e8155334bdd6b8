import { appointForOperator } from "#web/appoint-for-operator";
import { write } from "#web/write";

export const POST = write(appointForOperator);
