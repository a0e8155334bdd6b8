import { takeLetters } from "#web/take-letters";
import { write } from "#web/write";

export const dynamic = "force-dynamic";

export const POST = write(takeLetters);
