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
 * How likely a lag of at most `i + 1/2` steps is, averaged over an end that may lie up to `soft` steps farther on
 * (which shortens it).
 */
export function lagUpTo({ upTo, summed }: LagTable, i: number, soft: number): number {
  if (i < 0) return 0;
  const last = upTo.length - 1;
  if (soft === 0) return i > last ? 1 : (upTo[i] ?? 1);
  const lower = i - soft;
  if (lower >= last) return 1;
  const upper = i <= last ? (summed[i] ?? 0) : (summed[last] ?? 0) + (i - last);
  return (upper - (lower >= 0 ? (summed[lower] ?? 0) : 0)) / soft;
}
