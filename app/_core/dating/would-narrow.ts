import { CANDIDATES, type Candidate } from "./candidates.ts";
import { MONTHS } from "./day.ts";
import { modelOf } from "./event-model.ts";
import type { Evidence } from "./evidence.ts";
import { likelihood } from "./likelihood.ts";

/** What a kind of evidence, were it found, would be expected to tell. */
export type Narrowing = {
  readonly candidate: Candidate["id"];
  /** How many bits, on average over what it may turn out to say. */
  readonly bits: number;
  /** What share of the uncertain years would be left, on average: half of them at one bit. */
  readonly left: number;
};

/** Into so many steps the years in question are cut: an average needs no more. */
const STEPS = 36;
/** What is less likely than this on either side is not in question. */
const TAIL = 0.0005;

/** Of all kinds that are not there yet, how much each would be expected to tell; the most first. */
export function wouldNarrow(years: Float64Array, evidence: readonly Evidence[]): readonly Narrowing[] {
  const { cells, yearsEach } = coarse(years);
  return CANDIDATES.filter(
    (each) => !evidence.some((piece) => piece.reliability > 0 && sameKind(piece, each)),
  )
    .map((candidate) => {
      const bits = expectedBits(cells, yearsEach, candidate);
      return { candidate: candidate.id, bits, left: 2 ** -bits };
    })
    .sort((a, b) => b.bits - a.bits || (a.candidate < b.candidate ? -1 : 1));
}

function sameKind(piece: Evidence, candidate: Candidate): boolean {
  return piece.kind === candidate.kind && piece.event === candidate.event;
}

/** The years in question in equal steps. */
function coarse(years: Float64Array): { readonly cells: Float64Array; readonly yearsEach: number } {
  let [first, last] = [0, years.length - 1];
  for (let sum = 0; first < last; first++) {
    sum += years[first] ?? 0;
    if (sum > TAIL) break;
  }
  for (let sum = 0; last > first; last--) {
    sum += years[last] ?? 0;
    if (sum > TAIL) break;
  }
  const yearsEach = Math.max(1 / MONTHS, (last - first + 1) / STEPS);
  const count = Math.round((last - first + 1) / yearsEach);
  const cells = new Float64Array(count);
  let sum = 0;
  for (let c = 0; c < count; c++) {
    cells[c] = years[first + Math.floor((c + 0.5) * yearsEach)] ?? 0;
    sum += cells[c] ?? 0;
  }
  return { cells: cells.map((p) => p / sum), yearsEach };
}

/**
 * The mutual information of the making and of where the candidate's window would lie. Its window lies at a step s
 * with a probability that depends on the distance to the making alone, or, when the piece is false, as it would for
 * any other object of which as much is known.
 */
function expectedBits(cells: Float64Array, yearsEach: number, candidate: Candidate): number {
  const n = cells.length;
  const kernel = distances(n, yearsEach, candidate);
  let bits = 0;
  for (let s = -n; s < 2 * n; s++) {
    let mean = 0;
    for (let t = 0; t < n; t++) mean += (cells[t] ?? 0) * (kernel[t - s + 2 * n] ?? 0);
    if (mean <= 0) continue;
    for (let t = 0; t < n; t++) {
      const p = cells[t] ?? 0;
      const said = candidate.reliability * (kernel[t - s + 2 * n] ?? 0) + (1 - candidate.reliability) * mean;
      if (p > 0 && said > 0) bits += p * said * Math.log2(said / mean);
    }
  }
  return Math.max(0, bits);
}

/** How likely the window begins so many steps before the making (index 2 n is none), summing to 1 within reach. */
function distances(n: number, yearsEach: number, candidate: Candidate): Float64Array {
  const model = modelOf(candidate);
  const perStep = Math.max(1, Math.round(MONTHS * yearsEach));
  const window = { from: 0, to: MONTHS * candidate.years, softBelow: 0, softAbove: 0 };
  const steps = { perYear: MONTHS, first: -2 * n * perStep, count: 4 * n * perStep } as const;
  const months = likelihood(steps, window, model);
  const kernel = new Float64Array(4 * n);
  let sum = 0;
  for (let step = 0, k = 0; step < kernel.length; step++) {
    let within = 0;
    for (const end = k + perStep; k < end; k++) within += months[k] ?? 0;
    kernel[step] = within;
    sum += within;
  }
  for (let step = 0; step < kernel.length; step++) kernel[step] = (kernel[step] ?? 0) / sum;
  return kernel;
}
