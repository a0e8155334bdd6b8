import { ok } from "../result.ts";
import { authorsOfChanges } from "./authorship.ts";
import { PROGRAM } from "./close.ts";
import type { EntryCommand } from "./command.ts";
import type { EntryEvent } from "./entry-event.ts";
import type { Challenge, EntryHistory } from "./entry-history.ts";
import { sendsBack } from "./evolve.ts";
import { findChallenge, findReview } from "./find-in-history.ts";
import { notIndependent } from "./independence.ts";
import { DEFAULT_POLICY } from "./policy.ts";
import {
  badText,
  type Decision,
  LENGTHS,
  notAllowed,
  nothing,
  refuse,
  signed,
  whileLocked,
} from "./refuse.ts";

type Command<T extends EntryCommand["type"]> = Extract<EntryCommand, { type: T }>;

/** Votes for one outcome that settle an appeal: two of the three moderators it goes to. */
const MAJORITY = 2;

/** The one appeal against a decision, by who challenged or by who wrote what was challenged. */
export function appeal(history: EntryHistory, command: Command<"appeal">): Decision {
  const { at, by, challenge: id, reason } = command;
  const refused = notAllowed(by, "appeal");
  if (refused) return refused;
  const raised = findChallenge(history, id);
  if (!raised) return refuse("challenge", "challenge-unknown", id);
  if (!raised.decision) return refuse("challenge", "challenge-undecided", raised.claim);
  if (raised.appeal)
    return raised.appeal.by.id === by.id
      ? nothing
      : refuse("appeal", "appealed-already", raised.appeal.by.name);
  if (raised.by.id !== by.id && !authorsOfChanges(history, raised.revision).has(by.id))
    return refuse("member", "party-only", by.name);
  const bad = whileLocked(history) ?? badText("reason", reason, LENGTHS.appeal);
  return bad ?? ok([{ type: "appealed", at, by: signed(by), challenge: id, reason }]);
}

/** A moderator's vote on an appeal; the second for the same outcome settles it. */
export function voteOnAppeal(history: EntryHistory, command: Command<"vote on an appeal">): Decision {
  const { at, by, challenge: id, choice, reason } = command;
  const refused = notAllowed(by, "vote on an appeal");
  if (refused) return refused;
  const raised = findChallenge(history, id);
  if (!raised) return refuse("challenge", "challenge-unknown", id);
  const { appeal: open, decision } = raised;
  if (!open || !decision) return refuse("appeal", "not-appealed", raised.claim);
  const before = open.votes.find((each) => each.by.id === by.id);
  if (before?.choice === choice) return nothing;
  if (open.outcome !== null) return refuse("appeal", "appeal-over", open.outcome);
  if (before) return refuse("appeal", "appeal-voted", before.choice);
  if (decision.by.id === by.id) return refuse("member", "tie-decided", by.name);
  const bad = notIndependent(history, raised, by) ?? badText("reason", reason, LENGTHS.appealVote);
  if (bad) return bad;
  const cast: EntryEvent = { type: "appeal vote cast", at, by: signed(by), challenge: id, choice, reason };
  const alike = open.votes.filter((each) => each.choice === choice).length + 1;
  return ok(alike < MAJORITY ? [cast] : [cast, ...settle(history, raised, choice, at)]);
}

/** What an appeal comes to. A challenge that was wrongly dismissed sends the revision back to review. */
function settle(
  history: EntryHistory,
  raised: Challenge,
  choice: "let stand" | "overturn",
  at: string,
): readonly EntryEvent[] {
  const { id, revision } = raised;
  const outcome = choice === "overturn" ? "overturned" : "stands";
  const decided: EntryEvent = { type: "appeal decided", at, by: PROGRAM, challenge: id, outcome };
  if (outcome === "stands" || !sendsBack(raised) || history.verified !== revision) return [decided];
  const policy = findReview(history, revision)?.policy ?? DEFAULT_POLICY;
  return [decided, { type: "submitted", at, by: PROGRAM, revision, policy }];
}
