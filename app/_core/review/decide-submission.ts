import { ok } from "../result.ts";
import type { EntryCommand } from "./command.ts";
import type { RecordedRevision } from "./entry-event.ts";
import type { EntryHistory, Review } from "./entry-history.ts";
import { findReview, findRevision } from "./find-in-history.ts";
import { lacksForReview } from "./minimum.ts";
import {
  badText,
  type Decision,
  notAllowed,
  nothing,
  notTaking,
  refuse,
  signed,
  whileLocked,
} from "./refuse.ts";

type Command<T extends EntryCommand["type"]> = Extract<EntryCommand, { type: T }>;

/** A new revision; a revert is one too. */
export function recordRevision(history: EntryHistory, command: Command<"record a revision">): Decision {
  const { at, by, revision } = command;
  const refused = "importer" in by ? null : notAllowed(by, "write a draft");
  if (refused) return refused;
  if (findRevision(history, revision.id)) return nothing;
  const misplaced = notTaking(history) ?? notNext(history, revision);
  if (misplaced) return misplaced;
  if (!("importer" in by) && !revision.authors.includes(by.id))
    return refuse("revision", "author-missing", revision.authors.join(", "), { name: by.name });
  return ok([{ type: "revision recorded", at, by: signed(by), revision }]);
}

function notNext({ revisions }: EntryHistory, { number, parents }: RecordedRevision) {
  const next = revisions.length + 1;
  if (number !== next) return refuse("revision", "revision-number", String(number), { next });
  const unknown = parents.find((parent) => !revisions.some(({ id }) => id === parent));
  if (unknown !== undefined) return refuse("revision", "parent-unknown", unknown);
  return parents.length === 0 && next > 1 ? refuse("revision", "parent-missing", String(number)) : null;
}

/**
 * Puts a revision forward. An import is excused from the minimum, since nobody stands there to be asked: what it lacks
 * keeps it from being verified.
 */
export function submit(history: EntryHistory, command: Command<"submit">): Decision {
  const { at, by, revision: id, policy } = command;
  const refused = "importer" in by ? null : notAllowed(by, "submit a revision");
  if (refused) return refused;
  const revision = findRevision(history, id);
  if (!revision) return refuse("revision", "revision-unknown", id);
  if (history.verified === id || findReview(history, id)?.end === null) return nothing;
  const closed = notTaking(history);
  if (closed) return closed;
  const before = findReview(history, id)?.end?.is;
  if (before === "verified" || before === "not accepted")
    return refuse("revision", "reviewed-before", before);
  if (!("importer" in by)) {
    if (!revision.authors.includes(by.id)) return refuse("member", "author-only", by.name);
    const lacks = lacksForReview(revision);
    if (lacks.length > 0) return refuse("revision", "minimum", lacks.join(", "));
  }
  return ok([{ type: "submitted", at, by: signed(by), revision: id, policy }]);
}

/** Takes a revision back from review. */
export function withdraw(history: EntryHistory, command: Command<"withdraw a submission">): Decision {
  const { at, by, revision, reason } = command;
  const refused = notAllowed(by, "withdraw a submission");
  if (refused) return refused;
  const review = findReview(history, revision);
  if (!review) return refuse("revision", "not-under-review", revision);
  if (!maySpeakFor(history, review, by.id)) return refuse("member", "submitter-only", by.name);
  if (review.end?.is === "withdrawn") return nothing;
  if (review.end !== null) return refuse("review", "review-over", review.end.is);
  const bad = whileLocked(history) ?? badText("reason", reason, 0);
  return bad ?? ok([{ type: "submission withdrawn", at, by: signed(by), revision, reason }]);
}

/** Who submitted may withdraw; where no author did, as after a decision, any of them may. */
function maySpeakFor(history: EntryHistory, { revision, submittedBy }: Review, member: string): boolean {
  const authors = findRevision(history, revision)?.authors ?? [];
  const byAuthor = authors.some((author) => author === submittedBy.id);
  return byAuthor ? submittedBy.id === member : authors.includes(member);
}
