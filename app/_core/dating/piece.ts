import type { Basis, DatedStatement } from "./evidence.ts";

/** A piece of evidence as a worksheet keeps it: dates as EDTF texts. Its place on the sheet is its name. */
export type Piece = Omit<DatedStatement, "basis"> & {
  readonly basis: Basis | null;
  readonly group: string | null;
  /** Further dates, any of which may be meant instead of the first. */
  readonly alternatives: readonly string[];
};
