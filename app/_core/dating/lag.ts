import { MONTHS } from "./day.ts";
import { type EventModel, MODELS } from "./event-model.ts";

/**
 * How likely the lag between an event and the making is at most so long, by half months (index i is i + 1/2 months),
 * and the same added up, so that an end that may be out is averaged over by one difference.
 */
export type LagTable = { readonly upTo: Float64Array; readonly summed: Float64Array };

/** After this share of a lag the rest counts as none. */
const REST = 1e-6;

function tableOf(lags: EventModel["lags"]): LagTable {
  const longest = Math.max(0, ...lags.map(({ mean }) => mean));
  const months = Math.max(2, Math.ceil(MONTHS * longest * Math.log(1 / REST)));
  const upTo = new Float64Array(months).fill(1);
  for (const { share, mean } of lags) {
    const step = Math.exp(-1 / (MONTHS * mean));
    let left = share * Math.sqrt(step);
    for (let i = 0; i < months; i++) {
      upTo[i] = (upTo[i] ?? 0) - left;
      left *= step;
    }
  }
  const summed = new Float64Array(months);
  let sum = 0;
  for (let i = 0; i < months; i++) {
    sum += upTo[i] ?? 0;
    summed[i] = sum;
  }
  return { upTo, summed };
}

const TABLES: ReadonlyMap<string, LagTable> = new Map(
  Object.values(MODELS).map(({ id, lags }) => [id, tableOf(lags)]),
);

export function lagTable({ id }: EventModel): LagTable {
  const table = TABLES.get(id);
  if (!table) throw new Error(`No lags of the model ${id}`);
  return table;
}

/**
 * How likely a lag of at most `i + 1/2` months is, averaged over an end that may lie up to `soft` months farther on
 * (which shortens it): month by month, so that it is exact for lags that are none.
 */
export function lagUpTo({ upTo, summed }: LagTable, i: number, soft: number): number {
  const last = upTo.length - 1;
  if (soft === 0) return i < 0 ? 0 : (upTo[Math.min(i, last)] ?? 1);
  if (i < 0) return 0;
  const lower = i - soft;
  if (lower >= last) return 1;
  const upper = i <= last ? (summed[i] ?? 0) : (summed[last] ?? 0) + (i - last);
  return (upper - (lower >= 0 ? (summed[lower] ?? 0) : 0)) / soft;
}
