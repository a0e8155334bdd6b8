import { STANDING_ACTS, type StandingAct } from "#core/members/parse-standing";
import type { Action } from "#core/permissions";
import { actOnMember } from "#web/act-on-member";
import { writeAs } from "#web/write-as";

type Context = { readonly params: Promise<{ readonly id: string; readonly act: string }> };

const ACTIONS: Readonly<Record<StandingAct, Action>> = {
  reviewer: "appoint a reviewer",
  moderator: "appoint a moderator",
  suspend: "suspend a member",
  restore: "suspend a member",
};

export async function POST(request: Request, context: Context): Promise<Response> {
  const { id, act } = await context.params;
  const known = STANDING_ACTS.find((each) => each === act);
  if (!known) return new Response(null, { status: 404 });
  return writeAs<Context>(ACTIONS[known], (request, actor) => actOnMember(request, actor, id, known))(
    request,
    context,
  );
}
