import { beginDraft } from "#web/drafts/begin-draft";
import { writeAs } from "#web/write-as";

export const POST = writeAs("write a draft", beginDraft);
