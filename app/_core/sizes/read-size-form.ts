import { type FieldError, received } from "../field-error.ts";
import { MAKINGS, type Making } from "./allowances.ts";
import { type CataloguedLine, CONVENTIONS, type Measurement } from "./line.ts";

/** The fields of the form of sizes, each as typed: `sizes`, `unit`, `catalogue`, `making`, one for each convention. */
export type SizeForm = Readonly<Record<string, string>>;

export const UNITS = ["cm", "mm", "in"] as const;
const MILLIMETRES = { cm: 10, mm: 1, in: 25.4 } as const;
const MOST_SIZES = 30;
const LIMIT_MM = 10_000;

export type ReadSizes = {
  readonly line: CataloguedLine;
  readonly measurements: readonly Measurement[];
  readonly making: Making;
  readonly errors: readonly FieldError[];
};

/** Reads sizes and measures as typed; what can't be read is named and left out. */
export function readSizeForm(form: SizeForm): ReadSizes {
  const errors: FieldError[] = [];
  const unit = MILLIMETRES[oneOf(UNITS, form.unit) ?? "cm"];
  const refuse = (field: string, rule: string, value: string) =>
    errors.push({ field, rule, received: received(value) });
  const sizes = splitSizes(form.sizes ?? "").flatMap((typed) => {
    const millimetres = readNumber(typed) * unit;
    if (isSize(millimetres)) return [{ name: typed, millimetres }];
    refuse("sizes", "size-number", typed);
    return [];
  });
  if (sizes.length > MOST_SIZES) refuse("sizes", "sizes-most", String(sizes.length));
  const measurements = CONVENTIONS.flatMap((convention) => {
    const typed = (form[convention] ?? "").trim();
    if (typed === "") return [];
    const measure = readMeasure(typed, unit);
    if (measure) return [{ convention, ...measure }];
    refuse(convention, "measure", typed);
    return [];
  });
  return {
    line: { sizes: sizes.slice(0, MOST_SIZES), convention: oneOf(CONVENTIONS, form.catalogue) },
    measurements,
    making: oneOf<Making>(MAKINGS, form.making) ?? "stuffed",
    errors,
  };
}

function oneOf<T extends string>(allowed: readonly T[], value: string | undefined): T | null {
  return allowed.find((each) => each === value) ?? null;
}

const readNumber = (text: string) =>
  /^\d+(?:[.,]\d+)?$/.test(text) ? Number(text.replace(",", ".")) : Number.NaN;
const isSize = (millimetres: number) => millimetres > 0 && millimetres <= LIMIT_MM;

/** `17, 22, 28`, `17/22/28`, `17,5; 22` and `17,22,28`: a comma between figures is decimal unless all are commas. */
function splitSizes(typed: string): readonly string[] {
  const text = typed
    .trim()
    .replace(/\b(?:cm|mm|in|inches)\b/g, "")
    .trim();
  const separator = /^\d+(?:,\d+){2,}$/.test(text) ? /,/ : /\s*[;/]\s*|,\s+|\s+/;
  return text.split(separator).filter((each) => each !== "");
}

/** `16`, `16,5`, `16 ± 0.5`, `16 +- 0,5`; half a unit off when nothing is said. */
function readMeasure(typed: string, unit: number): Omit<Measurement, "convention"> | null {
  const [, size = "", within] =
    /^(\S+?)\s*(?:(?:±|\+\/?-)\s*(\S+))?$/.exec(typed.replace(/\s*(?:cm|mm|in)$/, "")) ?? [];
  const millimetres = readNumber(size) * unit;
  const off = within === undefined ? 0.5 * unit : readNumber(within) * unit;
  return isSize(millimetres) && off >= 0 && off < millimetres ? { millimetres, within: off } : null;
}

/** The fields' names, for the form and its address. */
export const SIZE_FIELDS: readonly string[] = ["sizes", "unit", "catalogue", "making", ...CONVENTIONS];
