import type { Basis } from "../dating/evidence.ts";

/** What every row of every table says of itself. */
export type Sourced = {
  readonly basis: Basis;
  /** How it was checked, in the words of whoever collected it. */
  readonly status: string;
  readonly source: string;
  /** A remark worth showing. */
  readonly note?: string;
};

const WEAKEST: readonly Basis[] = ["common-practice", "from-memory", "published"];

/** The basis of what follows from several rows together: that of the weakest. */
export function weakestBasis(rows: readonly Sourced[]): Basis {
  return WEAKEST.find((basis) => rows.some((row) => row.basis === basis)) ?? "from-memory";
}
