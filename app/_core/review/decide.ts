import { ok } from "../result.ts";
import { closeWhatIsOver } from "./close.ts";
import type { EntryCommand } from "./command.ts";
import { act } from "./decide-act.ts";
import { appeal, voteOnAppeal } from "./decide-appeal.ts";
import { challenge, decideChallenge } from "./decide-challenge.ts";
import { recordRevision, submit, withdraw } from "./decide-submission.ts";
import { answerVote, vote } from "./decide-vote.ts";
import type { EntryHistory } from "./entry-history.ts";
import { evolve } from "./evolve.ts";
import { type Decision, nothing } from "./refuse.ts";

/**
 * What follows from a command: events in the order in which they happen, none when it is so already.
 * Reviews that are over by then are closed first, so that no vote reaches one after its time, and those that the
 * command completes are closed last. A refusal carries no events: whoever is refused because a review is over finds it
 * closed as soon as "close what is over" is given, which anybody who looks may do.
 */
export function decide(history: EntryHistory, command: EntryCommand): Decision {
  const before = closeWhatIsOver(history, command.at);
  const closed = before.reduce(evolve, history);
  const decided = follow(closed, command);
  if (!decided.ok) return decided;
  const after = closeWhatIsOver(decided.value.reduce(evolve, closed), command.at);
  return ok([...before, ...decided.value, ...after]);
}

function follow(history: EntryHistory, command: EntryCommand): Decision {
  switch (command.type) {
    case "record a revision":
      return recordRevision(history, command);
    case "submit":
      return submit(history, command);
    case "withdraw a submission":
      return withdraw(history, command);
    case "vote":
      return vote(history, command);
    case "answer a vote":
      return answerVote(history, command);
    case "close what is over":
      return nothing;
    case "challenge":
      return challenge(history, command);
    case "decide a challenge":
      return decideChallenge(history, command);
    case "appeal":
      return appeal(history, command);
    case "vote on an appeal":
      return voteOnAppeal(history, command);
    case "hide content":
    case "merge":
    case "lock":
    case "undo an act":
      return act(history, command);
  }
}
