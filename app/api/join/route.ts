import { join } from "#web/join";
import { write } from "#web/write";

export const POST = write(join);
