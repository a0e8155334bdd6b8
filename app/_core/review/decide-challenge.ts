import { ok } from "../result.ts";
import { madeFrom } from "./authorship.ts";
import type { EntryCommand } from "./command.ts";
import type { EntryEvent } from "./entry-event.ts";
import type { Challenge, EntryHistory } from "./entry-history.ts";
import { findChallenge, findReview, findRevision, isOpen } from "./find-in-history.ts";
import { notIndependent } from "./independence.ts";
import { badText, type Decision, LENGTHS, notAllowed, nothing, notTaking, refuse, signed } from "./refuse.ts";

type Command<T extends EntryCommand["type"]> = Extract<EntryCommand, { type: T }>;

/** An objection to the verified revision, by any member. */
export function challenge(history: EntryHistory, command: Command<"challenge">): Decision {
  const { at, by, challenge: id, revision, claim, evidence } = command;
  const refused = notAllowed(by, "challenge");
  if (refused) return refused;
  if (findChallenge(history, id)) return nothing;
  const closed = notTaking(history);
  if (closed) return closed;
  if (history.verified !== revision) return refuse("revision", "verified-only", history.state);
  const same = history.challenges.some(
    (each) => each.claim === claim && each.by.id === by.id && isOpen(each),
  );
  if (same) return refuse("claim", "challenge-open", claim);
  const bad = badText("evidence", evidence.text, LENGTHS.evidence);
  return bad ?? ok([{ type: "challenged", at, by: signed(by), challenge: id, revision, claim, evidence }]);
}

/** A decision, and what it brings about in the same step. */
export function decideChallenge(history: EntryHistory, command: Command<"decide a challenge">): Decision {
  const { at, by, challenge: id, ruling, reason, consequence, policy } = command;
  const refused = notAllowed(by, "decide a challenge");
  if (refused) return refused;
  const raised = findChallenge(history, id);
  if (!raised) return refuse("challenge", "challenge-unknown", id);
  if (raised.decision) {
    const same = raised.decision.by.id === by.id && raised.decision.ruling === ruling;
    return same ? nothing : refuse("challenge", "challenge-decided", raised.decision.ruling);
  }
  const bad =
    notIndependent(history, raised, by) ??
    badText("reason", reason, LENGTHS.decision) ??
    cannotFollow(history, raised, command);
  if (bad) return bad;
  const decided: EntryEvent = {
    type: "challenge decided",
    at,
    by: signed(by),
    challenge: id,
    ruling,
    reason,
    consequence,
  };
  if (
    consequence.kind !== "new revision to review" ||
    findReview(history, consequence.revision)?.end === null
  )
    return ok([decided]);
  return ok([decided, { type: "submitted", at, by: signed(by), revision: consequence.revision, policy }]);
}

/** Why a consequence cannot be carried out, when it cannot. */
function cannotFollow(
  history: EntryHistory,
  { revision: challenged }: Challenge,
  { ruling, consequence }: Command<"decide a challenge">,
) {
  if (consequence.kind === "no change") return null;
  if (ruling === "dismissed") return refuse("consequence", "dismissed-changes-nothing", consequence.kind);
  if (history.verified !== challenged) return refuse("consequence", "verified-no-longer", consequence.kind);
  switch (consequence.kind) {
    case "withdrawn":
      return null;
    case "superseded":
      return consequence.entry === ownSlug(history) ? refuse("into", "into-itself", consequence.entry) : null;
    case "new revision to review": {
      const { revision } = consequence;
      if (!findRevision(history, revision)) return refuse("revision", "revision-unknown", revision);
      return madeFrom(history, revision, challenged)
        ? null
        : refuse("revision", "made-from-challenged", String(findRevision(history, revision)?.number));
    }
  }
}

/** Slug of the entry itself; null before its first revision. */
export const ownSlug = ({ revisions }: EntryHistory): string | null => revisions.at(-1)?.entry ?? null;
