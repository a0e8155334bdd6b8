import type { ImportCost } from "./fill.ts";
import type { HostFigures } from "./host.ts";
import type { Recall } from "./recall.ts";

/** Everything measured of one database at one size. */
export type Measured = {
  readonly name: string;
  readonly photographs: number;
  readonly cost: ImportCost;
  readonly recall: Recall;
  readonly host: HostFigures;
};

/** An import's rate, and what it spent its time on. */
export function importLine({ photographs, seconds, cores, parts }: ImportCost): string {
  const spent = Object.entries(parts).map(([part, ms]) => `${part} ${ms.toFixed(1)}`);
  return (
    `${photographs} photographs imported in ${seconds.toFixed(1)} s, ${(photographs / seconds).toFixed(0)} a second, ` +
    `${cores.toFixed(1)} cores busy; ms each: ${spent.join(", ")}`
  );
}

/** One row for each figure, one column for each database and size. */
export function printTable(measured: readonly Measured[]): void {
  const rows: readonly (readonly [string, (m: Measured) => string])[] = [
    ["decode, ms", ({ host }) => spread(host.decode)],
    ["preprocess, ms", ({ host }) => spread(host.preprocess)],
    ["embed, ms", ({ host }) => spread(host.embed)],
    ["search, ms", ({ host }) => spread(host.search)],
    ["answer, seen from outside, ms", ({ host }) => spread(host.answer)],
    ["page, seen from outside, ms", ({ host }) => spread(host.page)],
    ["right entry first", ({ host }) => host.first.toFixed(3)],
    ["index, all turns, ms", ({ recall }) => spread(recall.indexMs)],
    ["exact search, all turns, ms", ({ recall }) => spread(recall.exactMs)],
    ["recall@10 of the index", ({ recall }) => recall.at10.toFixed(4)],
    ["import, photographs a second", ({ cost }) => (cost.photographs / cost.seconds).toFixed(0)],
    ["start to first answer, s", ({ host }) => (host.startMs / 1000).toFixed(1)],
    [
      "memory, resident / peak, MB",
      ({ host }) => `${megabytes(host.residentBytes)} / ${megabytes(host.peakBytes)}`,
    ],
  ];
  const columns = measured.map(({ name, photographs }) => `${name} ${photographs}`);
  const width = Math.max(18, ...columns.map((title) => title.length + 2));
  const line = (label: string, cells: readonly string[]) =>
    console.log(label.padEnd(31) + cells.map((cell) => cell.padStart(width)).join(""));
  line("p50 / p95", columns);
  for (const [label, cell] of rows) line(label, measured.map(cell));
}

/** Median and 95th percentile (nearest rank). */
function spread(values: readonly number[]): string {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
  return `${at(0.5).toFixed(1)} / ${at(0.95).toFixed(1)}`;
}

const megabytes = (bytes: number) => (bytes / 1e6).toFixed(0);
