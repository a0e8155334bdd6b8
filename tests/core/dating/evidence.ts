import { parseInterval } from "#core/dates/parse";
import type { DatedEvent, Evidence, EvidenceKind } from "#core/dating/evidence";

type Words = Partial<Pick<Evidence, "reason" | "source" | "group" | "exceptions" | "basis">> & {
  readonly or?: readonly string[];
};

export function period(edtf: string) {
  const interval = parseInterval(edtf);
  if (!interval.ok) throw new Error(`Not a period: ${edtf}`);
  return interval.value;
}

/** A piece of evidence, as a worksheet holds it. */
export function piece(
  id: string,
  [kind, event]: readonly [EvidenceKind, DatedEvent],
  edtf: string,
  reliability: number,
  { or = [], ...words }: Words = {},
): Evidence {
  return {
    id,
    kind,
    event,
    interval: period(edtf),
    ...(or.length > 0 ? { alternatives: or.map(period) } : {}),
    reliability,
    reason: "",
    source: "",
    basis: null,
    exceptions: "",
    group: null,
    ...words,
  };
}

/** How likely it is that the object was made in these years, both counted in. */
export function chance(
  { grid, posterior }: { readonly grid: { readonly from: number }; readonly posterior: readonly number[] },
  from: number,
  to: number,
): number {
  return posterior.slice(from - grid.from, to - grid.from + 1).reduce((sum, p) => sum + p, 0);
}
