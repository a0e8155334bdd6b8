import { isSlug } from "#core/entries/slug";
import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import type { Typed } from "#core/questions/typed-text";
import type { Result } from "#core/result";
import {
  ENTRY_ACTS,
  type EntryAct,
  parseAnswer,
  parseAppeal,
  parseAppealVote,
  parseDecision,
  parseHiding,
  parseMerge,
  parseReason,
  parseVote,
  parseWithdrawal,
} from "#core/review/parse-acts";
import { answerVote } from "#usecases/answer-vote";
import { appealDecision } from "#usecases/appeal-decision";
import { castVote } from "#usecases/cast-vote";
import { decideChallenge } from "#usecases/decide-challenge";
import { hideContent } from "#usecases/hide-content";
import { lockEntry } from "#usecases/lock-entry";
import { mergeEntries } from "#usecases/merge-entries";
import { undoAct } from "#usecases/undo-act";
import { voteOnAppeal } from "#usecases/vote-on-appeal";
import { withdrawSubmission } from "#usecases/withdraw-submission";
import { answer, type Outcome, tokenIn } from "./answer-act.ts";
import { challengeByForm } from "./challenge-by-form.ts";
import { type Live, live } from "./live.ts";
import { pathsIn } from "./paths-in-form.ts";
import { readWords, refuse } from "./words-form.ts";

/** Does to an entry what a form asks for. */
export async function actOnEntry(request: Request, slug: string, act: string, by: Actor): Promise<Response> {
  const known = ENTRY_ACTS.find((each) => each === act);
  if (!known || !isSlug(slug)) return new Response(null, { status: 404 });
  if (known === "challenge") return challengeByForm(request, slug, by);
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, `/entries/${slug}`);
  const typed = form.value;
  const outcome = await does(await live(), by, slug, known, typed);
  return answer(request, outcome, { ...typed, did: known }, pathsIn(typed, slug, known));
}

async function does(
  wired: Live,
  by: Actor,
  slug: string,
  act: Exclude<EntryAct, "challenge">,
  typed: Typed,
): Promise<Outcome> {
  const after = <T>(
    read: Result<T, readonly FieldError[]>,
    next: (value: T) => Promise<Outcome>,
  ): Promise<Outcome> => (read.ok ? next(read.value) : Promise.resolve(read));
  const id = tokenIn(typed, "act", wired);
  switch (act) {
    case "vote":
      return after(parseVote(typed), (given) => castVote(wired, by, slug, given));
    case "answer":
      return after(parseAnswer(typed), (given) => answerVote(wired, by, slug, given));
    case "withdraw":
      return after(parseWithdrawal(typed), (given) => withdrawSubmission(wired, by, slug, given));
    case "decide":
      return after(parseDecision(typed), (given) => decideChallenge(wired, by, slug, given));
    case "appeal":
      return after(parseAppeal(typed), (given) => appealDecision(wired, by, slug, given));
    case "appeal-vote":
      return after(parseAppealVote(typed), (given) => voteOnAppeal(wired, by, slug, given));
    case "hide":
      return after(parseHiding(typed), (given) => hideContent(wired, by, slug, { act: id, ...given }));
    case "merge":
      return after(parseMerge(typed), (given) => mergeEntries(wired, by, slug, { act: id, ...given }));
    case "lock":
      return after(parseReason(typed), (given) => lockEntry(wired, by, slug, { act: id, ...given }));
    case "undo":
      return after(parseReason(typed), (given) => undoAct(wired, by, slug, { act: id, ...given }));
  }
}
