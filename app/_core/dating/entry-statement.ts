import type { EntrySummary } from "../entries/entry.ts";
import type { EntryState, Kind } from "../entries/vocabulary.ts";
import type { DatedEvent, EvidenceKind } from "./evidence.ts";
import type { Piece } from "./piece.ts";

/** What a kind of entry dates on an object. */
const OF_KIND: Readonly<Record<Kind, { readonly kind: EvidenceKind; readonly event: DatedEvent }>> = {
  mark: { kind: "mark", event: "marked" },
  label: { kind: "mark", event: "labelled" },
  "construction detail": { kind: "construction", event: "made" },
};

/**
 * How far an entry's period of use can be trusted, by its state. Common practice in numbers, shown and changed on the
 * worksheet: nobody has measured how often a verified period is right.
 */
const OF_STATE: Readonly<Record<EntryState, number>> = {
  verified: 0.95,
  "under review": 0.85,
  draft: 0.8,
  disputed: 0.7,
  "not accepted": 0.6,
  superseded: 0.6,
  withdrawn: 0.5,
};

export type EntryWords = { readonly reason: string; readonly source: string };

/**
 * An entry's period of use as a piece of evidence; null when it has none.
 * @param probability that the object bears this mark, where a look-up says so: what it is found by can't be surer
 */
export function pieceOfEntry(
  { kind, state, period }: Pick<EntrySummary, "kind" | "state" | "period">,
  words: EntryWords,
  probability = 1,
): Piece | null {
  if (!period) return null;
  const reliability = Math.min(0.999, Math.max(0.5, OF_STATE[state] * probability));
  return {
    ...OF_KIND[kind],
    ...words,
    edtf: period.edtf,
    reliability: Math.round(reliability * 1000) / 1000,
    basis: null,
    exceptions: "",
    group: null,
    alternatives: [],
  };
}
