import { type FieldError, received } from "../field-error.ts";
import type { Piece } from "./piece.ts";
import { EMPTY_WORKSHEET, WORKSHEET_LIMITS, WORKSHEET_VERSION, type Worksheet } from "./worksheet.ts";
import { readPiece } from "./worksheet-piece.ts";

/** The parameters of an address, as a server or a browser gives them. */
export type AddressParams = Readonly<Record<string, string | readonly string[] | undefined>>;

export type ReadWorksheet = { readonly worksheet: Worksheet; readonly errors: readonly FieldError[] };

/** Reads a worksheet from its address. What can't be read is named and left out; the rest is there. */
export function readWorksheet(params: AddressParams): ReadWorksheet {
  const version = one(params.v);
  const texts = all(params.e);
  if (version !== "" && version !== WORKSHEET_VERSION)
    return { worksheet: EMPTY_WORKSHEET, errors: [error("worksheet", "worksheet-version", version)] };
  const errors: FieldError[] = [];
  const pieces: Piece[] = [];
  for (const [i, text] of texts.slice(0, WORKSHEET_LIMITS.pieces).entries()) {
    const piece = readPiece(text, i + 1);
    if (piece.ok) pieces.push(piece.value);
    else errors.push(piece.error);
  }
  if (texts.length > WORKSHEET_LIMITS.pieces)
    errors.push(
      error("worksheet", "worksheet-most", String(texts.length), { most: WORKSHEET_LIMITS.pieces }),
    );
  const years = readYears(params, errors);
  return {
    worksheet: { title: one(params.t).trim().slice(0, WORKSHEET_LIMITS.title), years, pieces },
    errors,
  };
}

/** Reads a worksheet from the text of its address, or of its query alone. */
export function readAddress(text: string): ReadWorksheet {
  const query = new URLSearchParams(text.replace(/^[^?#]*\?/, "").replace(/#.*$/, ""));
  return readWorksheet(Object.fromEntries([...query.keys()].map((name) => [name, query.getAll(name)])));
}

/** `y=1850/1950`, or the two fields of a form. */
function readYears(params: AddressParams, errors: FieldError[]): Worksheet["years"] {
  const [first = "", second = ""] =
    params.from !== undefined || params.to !== undefined
      ? [one(params.from), one(params.to)]
      : one(params.y).split("/");
  const typed = [first.trim(), second.trim()];
  if (typed.every((each) => each === "")) return null;
  const [from = Number.NaN, to = Number.NaN] = typed.map((each) =>
    /^-?\d{1,4}$/.test(each) ? Number(each) : Number.NaN,
  );
  if (from <= to && to - from <= 2000) return { from, to };
  errors.push(error("years", "worksheet-years", typed.join("/")));
  return null;
}

function error(field: string, rule: string, value: string, params?: FieldError["params"]): FieldError {
  return { field, rule, received: received(value), ...(params ? { params } : {}) };
}

function one(value: AddressParams[string]): string {
  return ((typeof value === "string" ? value : value?.[0]) ?? "").replaceAll("\0", "");
}

function all(value: AddressParams[string]): readonly string[] {
  return value === undefined ? [] : typeof value === "string" ? [value] : value;
}
