import type { RecordedRevision } from "./entry-event.ts";
import type { EntryHistory } from "./entry-history.ts";
import { findRevision, wasVerified } from "./find-in-history.ts";

/**
 * Members who wrote some change that a revision puts to the vote: its own authors, and those of the revisions it was
 * made from, back to what was verified before.
 */
export function authorsOfChanges(history: EntryHistory, revision: string): ReadonlySet<string> {
  const changed = lineage(history, revision, (parent) => !wasVerified(history, parent));
  return new Set(changed.flatMap(({ authors }) => authors));
}

/** Members who wrote any part of what a revision says, verified long ago or not. */
export function authorsOfContent(history: EntryHistory, revision: string): ReadonlySet<string> {
  return new Set(lineage(history, revision, () => true).flatMap(({ authors }) => authors));
}

/** Was a revision made from another, by whatever way, or is it that one? */
export const madeFrom = (history: EntryHistory, revision: string, other: string): boolean =>
  lineage(history, revision, () => true).some(({ id }) => id === other);

/** A revision and those it was made from, through every parent that may be followed. */
function lineage(
  history: EntryHistory,
  revision: string,
  follow: (parent: string) => boolean,
): readonly RecordedRevision[] {
  const seen = new Set<string>();
  const waiting = [revision];
  const found: RecordedRevision[] = [];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    const here = seen.has(id) ? undefined : findRevision(history, id);
    seen.add(id);
    if (here === undefined) continue;
    found.push(here);
    waiting.push(...here.parents.filter(follow));
  }
  return found;
}
