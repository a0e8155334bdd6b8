import { type Worksheet, worksheetQuery } from "#core/dating/worksheet";
import type { DecoderInput, DecoderName } from "#core/decoding/decoders";

/** The fields of each decoder's form: their names stand in the address of its answer. */
const FIELDS: Readonly<Record<DecoderName, readonly string[]>> = {
  wording: ["wording", "signs"],
  hallmarks: ["office", "letter", "style", "standard", "others"],
  "registration-diamond": ["class", "top", "right", "bottom", "left"],
  "registered-designs": ["number"],
  "us-patents": ["number"],
  "us-design-patents": ["number"],
  "us-trade-marks": ["number"],
  materials: ["features"],
};

export const fieldsOf = (name: DecoderName): readonly string[] => FIELDS[name];

/** Does the address ask anything, or has somebody only opened the page? */
export function isAsked(name: DecoderName, input: DecoderInput): boolean {
  return FIELDS[name].some((field) => input[field] !== undefined);
}

/** A worksheet as the fields of an address; none when nothing stands on it. */
export function carriedFields(worksheet: Worksheet): readonly (readonly [string, string])[] {
  const isEmpty = worksheet.pieces.length === 0 && worksheet.title === "" && worksheet.years === null;
  return isEmpty ? [] : [...new URLSearchParams(worksheetQuery(worksheet))];
}

/** The address of a decoder, or of their list, with a worksheet carried along. */
export function carriedTo(path: string, worksheet: Worksheet): string {
  const fields = carriedFields(worksheet).map(([field, value]) => [field, value]);
  return fields.length === 0 ? path : `${path}?${new URLSearchParams(fields)}`;
}

export const addressOfDecoder = (name: DecoderName): string => `/dates/decoders/${name}`;

/** The first value of a field, as it was typed. */
export function typedIn(input: DecoderInput, field: string): string {
  const value = input[field];
  return typeof value === "string" ? value : (value?.[0] ?? "");
}

/** All values of a field that can be ticked several times. */
export function tickedIn(input: DecoderInput, field: string): readonly string[] {
  const value = input[field] ?? [];
  return typeof value === "string" ? [value] : value;
}
