/** Years, first and last counted in, and how much of the probability they hold. */
type YearRange = { readonly from: number; readonly to: number; readonly mass: number };

/** The shortest span that holds a share: nearly always one range, several when the probability has several heaps. */
export type Shortest = {
  /** In whole years, which hold the share or somewhat more. */
  readonly ranges: readonly YearRange[];
  readonly mass: number;
  /** To the month or the quarter, in fractional years, which hold the share itself. */
  readonly spans: readonly { readonly begins: number; readonly ends: number }[];
};

/** A distribution over equal cells, with what is asked of it again and again. */
export type Cells = {
  readonly mass: Float64Array;
  readonly sorted: Float64Array;
  /** In cells from the first. */
  readonly median: number;
};

export function cellsOf(mass: Float64Array): Cells {
  return { mass, sorted: mass.slice().sort(), median: medianOf(mass) };
}

export function shortestHolding(
  share: number,
  years: Cells,
  steps: Cells,
  { perYear, firstYear }: { readonly perYear: number; readonly firstYear: number },
): Shortest {
  const ranges = likeliest(share, years).runs.map(({ from, to }) => ({
    from: firstYear + from,
    to: firstYear + to,
    mass: years.mass.subarray(from, to + 1).reduce((sum, p) => sum + p, 0),
  }));
  const { runs, last, excess } = likeliest(share, steps);
  return {
    ranges,
    mass: ranges.reduce((sum, { mass }) => sum + mass, 0),
    // Of the cell that was taken last only a part was needed: at the edge of its run it is cut there.
    spans: runs.map(({ from, to }) => ({
      begins: firstYear + (from + (last === from && last !== to ? excess : 0)) / perYear,
      ends: firstYear + (to + 1 - (last === to ? excess : 0)) / perYear,
    })),
  };
}

/** Probabilities that differ by less, relatively, count as the same. */
const SAME = 1e-9;

type Run = { readonly from: number; readonly to: number };
type Likeliest = {
  readonly runs: readonly Run[];
  /** The cell that was taken last, and how much of it was not needed. */
  readonly last: number;
  readonly excess: number;
};

/** The likeliest cells that together hold a share; of those equally likely the ones nearest the median. */
function likeliest(share: number, { mass, sorted, median }: Cells): Likeliest {
  let held = 0;
  let i = sorted.length;
  while (i > 0 && held < share - SAME) {
    i--;
    held += sorted[i] ?? 0;
  }
  const above = (sorted[i] ?? 0) * (1 + SAME);
  const below = (sorted[i] ?? 0) * (1 - SAME);
  const taken = new Uint8Array(mass.length);
  held = 0;
  for (let k = 0; k < mass.length; k++) {
    if ((mass[k] ?? 0) <= above) continue;
    taken[k] = 1;
    held += mass[k] ?? 0;
  }
  // From the median outwards, the nearer first.
  const middle = Math.round(median);
  let last = -1;
  for (let step = 0; held < share - SAME && step < 2 * mass.length + 2; step++) {
    const k = step % 2 === 0 ? middle + step / 2 : middle - (step + 1) / 2;
    const p = mass[k];
    if (p === undefined || p > above || p < below) continue;
    taken[k] = 1;
    held += p;
    last = k;
  }
  const excess = last < 0 ? 0 : Math.max(0, held - share) / (mass[last] ?? 1);
  return { runs: runsOf(taken), last, excess };
}

function runsOf(taken: Uint8Array): readonly Run[] {
  const runs: Run[] = [];
  for (let k = 0; k < taken.length; k++) {
    if (taken[k] === 0) continue;
    const from = k;
    while (taken[k + 1] === 1) k++;
    runs.push({ from, to: k });
  }
  return runs;
}

/** Where half of the probability lies on either side, in cells from the first. */
export function medianOf(cells: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < cells.length; k++) {
    const p = cells[k] ?? 0;
    if (sum + p >= 0.5) return k + (p > 0 ? (0.5 - sum) / p : 0);
    sum += p;
  }
  return cells.length;
}
