import { parseInterval } from "#core/dates/parse";
import { estimate } from "#core/dating/estimate";
import type { DatedEvent, Evidence, EvidenceKind } from "#core/dating/evidence";

const KINDS: readonly (readonly [EvidenceKind, DatedEvent])[] = [
  ["mark", "marked"],
  ["wording", "labelled"],
  ["number", "marked"],
  ["hallmark", "marked"],
  ["catalogue-line", "made"],
  ["material", "made"],
  ["story", "given"],
  ["photograph", "photographed"],
  ["story", "owned"],
  ["story", "sold"],
];

/** Thirty pieces of every kind that spread over six hundred years and contradict each other as badly as they can. */
function thirtyPieces(): readonly Evidence[] {
  return Array.from({ length: 30 }, (_, i) => {
    const [kind, event] = KINDS[i % KINDS.length] ?? ["other", "made"];
    const year = 1450 + ((i * 37) % 530);
    const interval = parseInterval(i % 3 === 0 ? `${year}/${year + 60}~` : `${year}~/${year + 20}`);
    if (!interval.ok) throw new Error(`No period from ${year}`);
    return {
      id: `piece ${i + 1}`,
      kind,
      event,
      interval: interval.value,
      reliability: 0.6 + 0.01 * i,
      reason: "",
      source: "",
      basis: null,
      exceptions: "",
      group: i % 6 === 0 ? "letter" : null,
    };
  });
}

/** Milliseconds that an estimate by thirty pieces over six hundred years takes, from the quickest to the slowest. */
export function timeThirty(runs: number): readonly number[] {
  const pieces = thirtyPieces();
  return Array.from({ length: runs }, () => {
    const start = performance.now();
    estimate(pieces, { kind: "years", from: 1426, to: 2025 });
    return performance.now() - start;
  }).sort((a, b) => a - b);
}
