import type { ActingMember } from "#core/members/member";
import { discardDraft } from "#web/drafts/change-draft";
import { writeAs } from "#web/write-as";

type Context = { readonly params: Promise<{ readonly id: string }> };

export const POST = writeAs(
  "write a draft",
  async (request: Request, member: ActingMember, context: Context) =>
    discardDraft(request, (await context.params).id, member),
);
