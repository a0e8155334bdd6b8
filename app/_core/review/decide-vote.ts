import { ok } from "../result.ts";
import { authorsOfChanges } from "./authorship.ts";
import type { EntryCommand } from "./command.ts";
import type { EntryHistory, Review } from "./entry-history.ts";
import { findReview } from "./find-in-history.ts";
import { badText, type Decision, LENGTHS, notAllowed, nothing, notTaking, refuse, signed } from "./refuse.ts";

type Command<T extends EntryCommand["type"]> = Extract<EntryCommand, { type: T }>;

/**
 * A vote, or a changed one. Whoever is a reviewer may cast it, authors and interested parties too: whether it counts is
 * weighed afterwards, and shown with the rule.
 */
export function vote(history: EntryHistory, command: Command<"vote">): Decision {
  const { at, by, revision, choice, reason, basis } = command;
  const refused = notAllowed(by, "vote");
  if (refused) return refused;
  const review = findReview(history, revision);
  if (!review) return refuse("revision", "not-under-review", revision);
  const standing = review.votes.findLast(({ voter }) => voter.id === by.id);
  if (standing?.choice === choice && standing.reason === reason && standing.basis === basis) return nothing;
  const bad = over(review) ?? notTaking(history) ?? badText("reason", reason, review.policy.reason);
  if (bad) return bad;
  const { id, name, fields, interests } = by;
  const voter = { id, name, fields, interests };
  return ok([{ type: "vote cast", at, by: signed(by), revision, voter, choice, reason, basis }]);
}

/** An answer to a vote, by somebody who wrote a change in the revision or by another reviewer. */
export function answerVote(history: EntryHistory, command: Command<"answer a vote">): Decision {
  const { at, by, revision, voter, answer } = command;
  const refused = notAllowed(by, "answer a vote");
  if (refused) return refused;
  const review = findReview(history, revision);
  if (!review) return refuse("revision", "not-under-review", revision);
  const cast = review.votes.findLast((each) => each.voter.id === voter);
  if (!cast) return refuse("vote", "vote-unknown", voter);
  if (voter === by.id) return refuse("vote", "own-vote", cast.voter.name);
  const given = review.answers.some(
    (each) => each.by.id === by.id && each.voter === voter && each.text === answer && each.at >= cast.at,
  );
  if (given) return nothing;
  if (!by.roles.includes("reviewer") && !authorsOfChanges(history, revision).has(by.id))
    return refuse("member", "author-or-reviewer", by.name);
  const bad = over(review) ?? notTaking(history) ?? badText("answer", answer, LENGTHS.answer);
  return bad ?? ok([{ type: "vote answered", at, by: signed(by), revision, voter, answer }]);
}

const over = ({ end }: Review) => (end === null ? null : refuse("review", "review-over", end.is));
