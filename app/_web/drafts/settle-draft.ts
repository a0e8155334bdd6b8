import { closeGaps, mergeTyped } from "#core/drafts/merge-typed";
import { photographsAfter } from "#core/drafts/three-ways";
import { tidyTyped } from "#core/drafts/tidy-typed";
import type { Merged } from "#core/entries/merge-content";
import { CHOICES, type Settled, settleConflicts } from "#core/entries/settle-conflicts";
import type { ActingMember } from "#core/members/member";
import type { Typed } from "#core/questions/typed-text";
import { weighMeanwhile } from "#usecases/weigh-meanwhile";
import { keepForm } from "../kept-forms.ts";
import { live } from "../live.ts";
import { redirect } from "../look-up-answer.ts";
import { readForm } from "../read-form.ts";
import { refuse } from "../words-form.ts";
import { typedIn } from "./read-draft-form.ts";

/** Room for both sides of a draft. */
const ROOM = 512 * 1024;

/** Puts two sides of a draft together as a person chose: with a newer revision, or with what another window saved. */
export async function settleDraft(request: Request, id: string, member: ActingMember): Promise<Response> {
  const page = `/contribute/${id}`;
  const wired = await live();
  const draft = await wired.drafts.find(id, member.id);
  if (!draft || draft.submitted) return new Response(null, { status: 404 });
  const form = await readForm(request, ROOM);
  if (!form.ok) return refuse(request, [form.error], {}, page);
  const sent = Object.fromEntries(
    [...form.value.entries()].flatMap(([name, value]) =>
      typeof value === "string" ? [[name, value] as const] : [],
    ),
  );
  const version = Number(sent.version) || 0;
  if (sent.with === "revision") {
    const meanwhile = await weighMeanwhile(wired.revisions, draft);
    if (!meanwhile) return redirect(page);
    const chosen = settle(meanwhile, sent);
    if (!chosen || sent.newest !== meanwhile.newest.id) return redirect(`${page}/meanwhile?choose=1`);
    const { base, theirs, newest } = meanwhile;
    const photographs = photographsAfter(draft, base, theirs, chosen);
    const parents = [...draft.parents, newest.id];
    const saved = await wired.drafts.save(id, member.id, version, {
      typed: chosen,
      parents,
      basedOn: newest.id,
      photographs,
    });
    return redirect(saved ? `${page}?said=settled` : `${page}/meanwhile`);
  }
  const [mine, base] = [typedIn(sent.mine), typedIn(sent.base)];
  const chosen = settle(mergeTyped(base, mine, draft.typed), sent);
  const again = () =>
    redirect(
      `${page}/differing?choose=1&form=${keepForm({ errors: [], typed: { mine: sent.mine ?? "", base: sent.base ?? "" } })}`,
    );
  if (!chosen) return again();
  const saved = await wired.drafts.save(id, member.id, version, { typed: chosen });
  return saved ? redirect(`${page}?said=settled`) : again();
}

/** @returns null while something is left to choose */
function settle(merged: Merged, sent: Typed): Typed | null {
  const chosen = settleConflicts(merged, (group): Settled | null => {
    const choice = CHOICES.find((each) => each === sent[`choice-${group}`]);
    return choice ? { choice, own: sent[`own-${group}`] ?? "" } : null;
  });
  return chosen && tidyTyped(closeGaps(chosen));
}
