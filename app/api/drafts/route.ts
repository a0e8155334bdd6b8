import { beginDraft } from "#web/drafts/begin-draft";
import { write } from "#web/write";

export const POST = write(beginDraft);
