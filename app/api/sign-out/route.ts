import { signOut } from "#web/sign-out";
import { write } from "#web/write";

export const POST = write(signOut);
