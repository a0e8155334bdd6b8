import { DECODERS } from "#core/decoding/decoders";
import { type Check, type CheckBasis, checkPoints } from "./decoder-checks/check-points.ts";
import { checkTables } from "./decoder-checks/check-tables.ts";

/**
 * Checks every decoder, against dates from outside its table and against its own table, and prints how many checks
 * passed by where their date comes from. Exits with 1 when one did not.
 *
 *   npm run check-decoders
 */
const BASES: readonly CheckBasis[] = ["published", "from-memory", "common-practice", "computed"];
const WIDTH = 17;

const checks = [...checkPoints(), ...checkTables()];
for (const against of ["outside", "table"] as const) {
  console.log(
    against === "outside" ? "Against dates from outside the tables" : "\nAgainst every row of the tables",
  );
  console.log(row("decoder", BASES));
  for (const decoder of DECODERS) print(decoder, (check) => check.decoder === decoder, against);
  print("all", () => true, against);
}
const failed = checks.filter(({ passed }) => !passed);
for (const { decoder, what } of failed) console.error(`Failed: ${decoder} ${what}`);
if (failed.length > 0) process.exitCode = 1;

function print(name: string, of: (check: Check) => boolean, against: Check["against"]): void {
  const mine = checks.filter((check) => check.against === against && of(check));
  if (mine.length === 0) return;
  const counts = BASES.map((basis) => {
    const all = mine.filter((check) => check.basis === basis);
    return all.length === 0 ? "-" : `${all.filter(({ passed }) => passed).length} of ${all.length}`;
  });
  console.log(row(name, counts));
}

function row(name: string, cells: readonly string[]): string {
  return name.padEnd(24) + cells.map((cell) => cell.padStart(WIDTH)).join("");
}
