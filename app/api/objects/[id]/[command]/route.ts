import type { ActingMember } from "#core/members/member";
import { actOnObjectFile } from "#web/object-files/act-on-object-file";
import { writeAs } from "#web/write-as";

type Context = { readonly params: Promise<{ readonly id: string; readonly command: string }> };

export const POST = writeAs(
  "keep an object file",
  async (request: Request, member: ActingMember, context: Context) => {
    const { id, command } = await context.params;
    return actOnObjectFile(request, id, command, member);
  },
);
