import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { FileMeasurement } from "./object-file.ts";
import type { Measured } from "./vocabulary.ts";

/** Millimetres or grams to one of each. */
const LENGTHS: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };
const WEIGHTS: Readonly<Record<string, number>> = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 };

const SAME_UNIT: Readonly<Record<string, string>> = {
  '"': "in",
  "”": "in",
  "″": "in",
  inch: "in",
  inches: "in",
};
/** Ten metres, a tonne. */
const LARGEST = { length: 10_000, weight: 1_000_000 } as const;
/** A worn edge and a rule allow no better than half a millimetre; kitchen scales no better than half a gram. */
const FINEST = 0.5;
const FRACTIONS: Readonly<Record<string, string>> = {
  ...{
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
  },
};

export type Amount = Pick<FileMeasurement, "amount" | "within" | "typed">;
type Typed = { readonly amount: string; readonly unit: string; readonly within: string };

/**
 * Reads a measure as people write it: "16", "16,5 cm", "6 1/2 in", "6½″", "22 ± 0.3". A unit that stands with the
 * number goes before the chosen one. Where nothing is said of how far off it may be, half of the last place or of the
 * smallest fraction is taken, and half a millimetre at least.
 */
export function readAmount(typed: Typed, measured: Measured): Result<Amount, FieldError> {
  const units = measured === "weight" ? WEIGHTS : LENGTHS;
  const text = typed.amount.trim();
  const parts = /^(.*?[^a-z\s"”″.])\s*([a-z"”″]+\.?)?$/i.exec(text);
  const written = (parts?.[2] ?? "").toLowerCase().replace(".", "");
  const name = written === "" ? typed.unit.trim() : (SAME_UNIT[written] ?? written);
  const unit = units[name];
  if (unit === undefined) return refuse("unit", "one-of", name, { allowed: Object.keys(units).join(", ") });
  const [size = "", off = typed.within.trim()] = (parts?.[1] ?? "").split(/\s*(?:±|\+\/?-)\s*/);
  const number = readNumber(size);
  const largest = LARGEST[measured === "weight" ? "weight" : "length"];
  if (number === null) return refuse("amount", "measure-number", text);
  const amount = tidy(number.value * unit);
  if (amount <= 0 || amount > largest) return refuse("amount", "measure-range", text, { largest });
  const stated = off === "" ? null : readWithin(off, units, unit);
  if (off !== "" && (stated === null || stated >= amount)) return refuse("within", "measure-within", off);
  const within = stated ?? tidy(Math.max(FINEST, number.place * unit * 0.5));
  return ok({ amount, within: Math.min(within, amount), typed: written === "" ? `${text} ${name}` : text });
}

/** How far off, in millimetres or grams: "2 mm" beside a measure in centimetres is two millimetres. */
function readWithin(off: string, units: typeof LENGTHS, otherwise: number): number | null {
  const [, size = "", written = ""] = /^(.*?)\s*([a-z"”″]*)\.?$/i.exec(off) ?? [];
  const name = written.toLowerCase();
  const unit = name === "" ? otherwise : units[SAME_UNIT[name] ?? name];
  const number = readNumber(size);
  return number === null || unit === undefined ? null : tidy(number.value * unit);
}

function refuse(field: string, rule: string, value: string, params?: FieldError["params"]) {
  return fail({ field, rule, received: received(value), ...(params ? { params } : {}) });
}

/** A number and what its last place is worth. */
function readNumber(text: string): { readonly value: number; readonly place: number } | null {
  const plain = text
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${FRACTIONS[sign] ?? ""}`)
    .replace(/(\d)-(\d+\/)/, "$1 $2")
    .trim();
  const decimal = /^(\d+)(?:[.,](\d+))?$/.exec(plain);
  if (decimal) return { value: Number(plain.replace(",", ".")), place: 10 ** -(decimal[2]?.length ?? 0) };
  const [, whole = "0", over, under] = /^(?:(\d+)\s+)?(\d+)\/(\d+)$/.exec(plain) ?? [];
  if (over === undefined || under === undefined || Number(under) === 0) return null;
  return { value: Number(whole) + Number(over) / Number(under), place: 1 / Number(under) };
}

/** What is finer is only what a computer makes of tenths: 6.1 x 25.4 is 154.94 and no more. */
const tidy = (amount: number) => Math.round(amount * 10_000) / 10_000;
