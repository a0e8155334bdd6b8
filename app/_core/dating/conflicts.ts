import type { Evidence } from "./evidence.ts";
import { hardReading, type Span, spanOf } from "./hard-reading.ts";

/** Sets of more pieces than this are not looked for: nobody can hold them against each other. */
const LARGEST = 4;

/**
 * Every smallest set of pieces that cannot all be true, each taken at its word.
 *
 * For every stretch of days between two ends, some pieces say that the object was not made then. Pieces contradict
 * each other exactly when together they leave no stretch over: the smallest such sets are the smallest that have a
 * piece in common with each of the lists. (Pieces with one period each contradict each other in pairs, by Helly's
 * theorem; more are needed only where one may mean several periods.)
 */
export function findConflicts(evidence: readonly Evidence[]): readonly (readonly string[])[] {
  const pieces = evidence
    .filter(({ reliability }) => reliability > 0)
    .map((piece) => ({ id: piece.id, spans: hardReading(piece).map(spanOf) }))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  if (pieces.every(({ spans }) => spans.length === 1)) return pairs(pieces);
  const againstStretch = stretches(pieces.flatMap(({ spans }) => spans)).map((day) =>
    pieces.filter(({ spans }) => !spans.some(({ from, to }) => from <= day && day <= to)).map(({ id }) => id),
  );
  let sets: readonly (readonly string[])[] = [[]];
  for (const against of smallest(againstStretch)) {
    const met = sets.filter((set) => set.some((id) => against.includes(id)));
    const added = sets
      .filter((set) => !met.includes(set) && set.length < LARGEST)
      .flatMap((set) => against.map((id) => [...set, id].sort()));
    sets = smallest([...met, ...added]);
  }
  return [...sets].sort((a, b) => a.length - b.length || (a.join("\n") < b.join("\n") ? -1 : 1));
}

type Piece = { readonly id: string; readonly spans: readonly Span[] };

function pairs(pieces: readonly Piece[]): readonly (readonly string[])[] {
  return pieces.flatMap(({ id, spans: [a] }, i) =>
    pieces
      .slice(i + 1)
      .filter(({ spans: [b] }) => a && b && (a.to < b.from || b.to < a.from))
      .map((other) => [id, other.id]),
  );
}

/** One day of every stretch in which nothing changes: each end, and what lies between two. */
function stretches(spans: readonly Span[]): readonly number[] {
  const ends = spans.flatMap(({ from, to }) => [from, from - 0.5, to, to + 0.5]).filter(Number.isFinite);
  return [...new Set([0, ...ends])].sort((a, b) => a - b);
}

/** Those lists that hold no other: a list that holds another is met whenever the other is. */
function smallest(lists: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const kept: (readonly string[])[] = [];
  for (const list of [...lists].sort((a, b) => a.length - b.length)) {
    if (!kept.some((other) => other.every((id) => list.includes(id)))) kept.push(list);
  }
  return kept;
}
