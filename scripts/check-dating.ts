import { parseArgs } from "node:util";
import { coverage, SHARES } from "./check-dating/coverage.ts";
import { timeThirty } from "./check-dating/heavy.ts";

/**
 * How often the spans that an estimate gives hold the year in which an object was made, over objects whose year is
 * known and whose evidence the models drew; and how long an estimate takes.
 *
 *   npm run check-dating [-- --objects 2000] [--seed 1]
 */
const { values } = parseArgs({
  options: { objects: { type: "string", default: "2000" }, seed: { type: "string", default: "1" } },
});
const objects = Number(values.objects);
if (!Number.isInteger(objects) || objects < 1)
  throw new Error(`--objects: must be a whole number above 0. Received ${values.objects}.`);

const grids = [
  { from: 1800, to: 1949 },
  { from: 1500, to: 1999 },
];
console.log(`Objects of known years, one to six pieces of evidence each, seed ${values.seed}\n`);
console.log(
  "years      objects   span   held the year   years it spans   whole years say   and held   pieces contradict",
);
for (const { from, to } of grids) {
  const { held, years, wholeYears, conflicts } = coverage(objects, Number(values.seed), from, to);
  for (const share of SHARES) {
    const row = [
      `${from}-${to}`,
      String(objects).padStart(8),
      `${share}%`.padStart(6),
      `${((100 * held[share]) / objects).toFixed(1)}%`.padStart(15),
      years[share].toFixed(1).padStart(16),
      `${(100 * wholeYears[share].say).toFixed(1)}%`.padStart(17),
      `${((100 * wholeYears[share].held) / objects).toFixed(1)}%`.padStart(10),
      `${((100 * conflicts) / objects).toFixed(1)}%`.padStart(19),
    ];
    console.log(row.join(" "));
  }
}

const times = timeThirty(300);
const at = (share: number) => (times[Math.floor(share * (times.length - 1))] ?? 0).toFixed(2);
console.log(
  `\n30 pieces over 600 years, 300 times: quickest ${at(0)} ms, median ${at(0.5)} ms, 95 in 100 within ${at(0.95)} ms`,
);
