import type { ActingMember } from "#core/members/member";
import { WAYS } from "#core/object-files/kept-file";
import type { Typed } from "#core/questions/typed-text";
import { type AccessAsked, openObjectToOthers } from "#usecases/open-object-to-others";
import { keepForm } from "../kept-forms.ts";
import { live } from "../live.ts";
import { done, readWords, refuse, wantsJson } from "../words-form.ts";

export const ACCESS_ACTS = [
  "invite",
  "end-invitation",
  "share",
  "revoke",
  "publish",
  "end-publication",
] as const;
export type AccessAct = (typeof ACCESS_ACTS)[number];

/** Lets somebody into a file or shuts them out, by a form. The address of a new link is shown once. */
export async function openToOthers(
  request: Request,
  id: string,
  act: AccessAct,
  by: ActingMember,
): Promise<Response> {
  const page = `/objects/${id}/share`;
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, page);
  const result = await openObjectToOthers(await live(), id, by, asked(act, form.value));
  if (!result.ok) {
    if (result.error.rule === "object-file-unknown" && !wantsJson(request))
      return new Response(null, { status: 404 });
    return refuse(request, [result.error], { ...form.value, did: act }, page);
  }
  const key = result.value;
  if (key === null) return done(request, { id }, `${page}?said=${act}`);
  const address = `/shared/${key}`;
  const kept = keepForm({ errors: [], typed: { address } });
  return done(request, { id, address }, `${page}?said=share&link=${kept}`);
}

function asked(act: AccessAct, typed: Typed): AccessAsked {
  switch (act) {
    case "invite": {
      const way = WAYS.find((each) => each === typed.way) ?? "view";
      return { kind: "invite", member: (typed.invited ?? "").slice(0, 300), way };
    }
    case "end-invitation":
      return { kind: "end invitation", member: typed.member ?? "" };
    case "end-publication":
      return { kind: "end publication" };
    default:
      return { kind: act };
  }
}
