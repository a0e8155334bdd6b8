import { type EventModel, MODELS } from "./event-model.ts";

/**
 * How likely the lag between an event and the making is at most so long, by steps (index i is i + 1/2 of them), and
 * the integral of that from 0, so that an end that may be out is averaged over by one difference.
 */
export type LagTable = { readonly upTo: Float64Array; readonly summed: Float64Array };

/** After this share of a lag the rest counts as none. */
const REST = 1e-6;

function tableOf(lags: EventModel["lags"], perYear: number): LagTable {
  const longest = Math.max(0, ...lags.map(({ mean }) => mean));
  const steps = Math.max(2, Math.ceil(perYear * longest * Math.log(1 / REST)));
  const upTo = new Float64Array(steps).fill(1);
  for (const { share, mean } of lags) {
    const step = Math.exp(-1 / (perYear * mean));
    let left = share * Math.sqrt(step);
    for (let i = 0; i < steps; i++) {
      upTo[i] = (upTo[i] ?? 0) - left;
      left *= step;
    }
  }
  const summed = new Float64Array(steps);
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const here = upTo[i] ?? 0;
    summed[i] = sum + here / 2;
    sum += here;
  }
  return { upTo, summed };
}

const TABLES: ReadonlyMap<string, LagTable> = new Map(
  Object.values(MODELS).flatMap(({ id, lags }) =>
    [12, 4].map((perYear) => [`${id} ${perYear}`, tableOf(lags, perYear)] as const),
  ),
);

export function lagTable({ id }: EventModel, perYear: 12 | 4): LagTable {
  const table = TABLES.get(`${id} ${perYear}`);
  if (!table) throw new Error(`No lags of the model ${id}`);
  return table;
}

/**
 * Adds, at each step of a grid, how likely a lag of at most `i + 1/2` steps is, averaged over an end that may lie up
 * to `soft` steps farther on (which shortens it).
 * @param start i at the grid's first step
 * @param direction whether i grows or falls from step to step
 */
export function addLags(
  into: Float64Array,
  { upTo, summed }: LagTable,
  { start, direction, soft, sign }: LagEdge,
): void {
  const last = upTo.length - 1;
  for (let k = 0, i = start; k < into.length; k++, i += direction) {
    if (i < 0) continue;
    let likely = 1;
    if (soft === 0) {
      if (i <= last) likely = upTo[i] ?? 1;
    } else if (i - soft < last) {
      const upper = i <= last ? (summed[i] ?? 0) : (summed[last] ?? 0) + (i - last);
      likely = (upper - (i >= soft ? (summed[i - soft] ?? 0) : 0)) / soft;
    }
    into[k] = (into[k] ?? 0) + sign * likely;
  }
}

export type LagEdge = {
  readonly start: number;
  readonly direction: 1 | -1;
  readonly soft: number;
  readonly sign: 1 | -1;
};
