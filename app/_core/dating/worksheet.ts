import { parseInterval } from "../dates/parse.ts";
import type { DatedStatement, Evidence } from "./evidence.ts";
import type { Piece } from "./piece.ts";
import type { Prior } from "./prior.ts";
import { writePiece } from "./worksheet-piece.ts";

export type Worksheet = {
  readonly title: string;
  /** The years that are considered at all; null for as many as the evidence spans. */
  readonly years: { readonly from: number; readonly to: number } | null;
  readonly pieces: readonly Piece[];
};

export const EMPTY_WORKSHEET: Worksheet = { title: "", years: null, pieces: [] };
/** The form of the address; a later form gets a later number, and this one goes on being read. */
export const WORKSHEET_VERSION = "1";
export const WORKSHEET_LIMITS = { pieces: 30, title: 120, address: 12_000 } as const;

/** What a decoder or an entry says, as a piece; other dates, of which any may be meant instead, go with it. */
function pieceOf(statement: DatedStatement, alternatives: readonly string[] = []): Piece {
  return { ...statement, group: null, alternatives };
}

/** The worksheet as the query of an address: the same worksheet is always the same text. */
export function worksheetQuery({ title, years, pieces }: Worksheet): string {
  const query = new URLSearchParams({ v: WORKSHEET_VERSION });
  if (title !== "") query.set("t", title);
  if (years) query.set("y", `${years.from}/${years.to}`);
  for (const piece of pieces) query.append("e", writePiece(piece));
  return query.toString();
}

/** The address of the worksheet with one statement more. */
export function worksheetAddress(
  worksheet: Worksheet,
  statement: DatedStatement,
  alternatives: readonly string[] = [],
): string {
  return addressOf({ ...worksheet, pieces: [...worksheet.pieces, pieceOf(statement, alternatives)] });
}

export function addressOf(worksheet: Worksheet): string {
  return `/dates?${worksheetQuery(worksheet)}`;
}

/** Where a worksheet is taken into an object file. */
export function takeAddressOf(worksheet: Worksheet): string {
  return `/objects/take?${worksheetQuery(worksheet)}`;
}

/** The evidence for the engine, each piece named by its place from 1. */
export function evidenceOf({ pieces }: Worksheet): readonly Evidence[] {
  return pieces.flatMap(({ edtf, alternatives, ...piece }, i) => {
    const parsed = parseInterval(edtf);
    const others = alternatives.flatMap((each) => {
      const other = parseInterval(each);
      return other.ok ? [other.value] : [];
    });
    return parsed.ok ? [{ ...piece, id: String(i + 1), interval: parsed.value, alternatives: others }] : [];
  });
}

export function priorOf({ years }: Worksheet, thisYear: number): Prior {
  return years ? { kind: "years", ...years } : { kind: "widest", thisYear };
}
