import type { FieldError } from "../field-error.ts";
import type { ActingMember } from "../members/member.ts";
import type { Result } from "../result.ts";
import { authorsOfContent } from "./authorship.ts";
import type { Challenge, EntryHistory } from "./entry-history.ts";
import { refuse } from "./refuse.ts";

/** How a member is bound up with a challenge. */
export const TIES = ["challenged it", "wrote what is challenged", "voted on what is challenged"] as const;
type Tie = (typeof TIES)[number];

/** The tie that keeps a member from judging a challenge; null when there is none. */
function tieTo(history: EntryHistory, challenge: Challenge, member: string): Tie | null {
  const { revision, by } = challenge;
  if (by.id === member) return "challenged it";
  if (authorsOfContent(history, revision).has(member)) return "wrote what is challenged";
  const voted = history.reviews.some(
    ({ revision: reviewed, votes }) =>
      reviewed === revision && votes.some(({ voter }) => voter.id === member),
  );
  return voted ? "voted on what is challenged" : null;
}

/** Refuses who wrote, voted or challenged. */
export function notIndependent(
  history: EntryHistory,
  challenge: Challenge,
  member: ActingMember,
): Result<never, FieldError> | null {
  const tie = tieTo(history, challenge, member.id);
  return tie === null ? null : refuse("member", `tie-${tie.split(" ", 1)[0] ?? ""}`, member.name);
}
