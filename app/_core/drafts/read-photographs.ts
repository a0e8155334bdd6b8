import { MOST_IMPRESSIONS } from "../photographs/limits.ts";
import type { Photograph } from "../photographs/photograph.ts";
import { checkRegion, type Region, wholeOf } from "../photographs/region.ts";
import { type Typed, type TypedReader, tidyLine } from "../questions/typed-text.ts";
import type { DraftPhotograph } from "./draft.ts";
import { type PhotographPart, photographField } from "./draft-fields.ts";

/** A photograph with what is said of it, before it is recorded. */
export type PhotographToSubmit = Omit<Photograph, "id">;

/** Reads what is typed of each photograph; an entry needs one, with credit and licence. */
export function readPhotographs(
  read: TypedReader,
  typed: Typed,
  photographs: readonly DraftPhotograph[],
): readonly PhotographToSubmit[] {
  if (photographs.length === 0) read.refuse("photograph", "photograph-needed", "");
  return photographs.map((photograph, i) => {
    const before = read.errors.length;
    const said = readOne(read, typed, photograph);
    // Which of them it is, as the form counts them.
    read.errors.slice(before).forEach((error, j) => {
      read.errors[before + j] = { ...error, params: { ...error.params, place: i + 1 } };
    });
    return said;
  });
}

function readOne(read: TypedReader, typed: Typed, photograph: DraftPhotograph): PhotographToSubmit {
  const { sha256, width, height } = photograph;
  const field = (part: PhotographPart) => photographField(sha256, part);
  return {
    sha256,
    width,
    height,
    shows: read.line(field("shows"), { longest: 300 }),
    credit: read.line(field("credit"), { shortest: 1, longest: 120 }),
    licence: read.line(field("licence"), { shortest: 1, longest: 200 }),
    impression: readImpression(read, typed, field("impression")),
    pixelsPerMm: readScale(read, typed, field("pixels_per_mm")),
    region: readRegion(read, typed, photograph),
  };
}

function readImpression(read: TypedReader, typed: Typed, field: string): number | null {
  const text = tidyLine(typed[field] ?? "");
  if (text === "") return null;
  const number = Number(text);
  if (Number.isInteger(number) && number >= 1 && number <= MOST_IMPRESSIONS) return number;
  read.refuse(field, "whole-number", text, { from: 1, to: MOST_IMPRESSIONS });
  return null;
}

function readScale(read: TypedReader, typed: Typed, field: string): number | null {
  const text = tidyLine(typed[field] ?? "").replace(",", ".");
  if (text === "") return null;
  const number = Number(text);
  if (Number.isFinite(number) && number > 0) return number;
  read.refuse(field, "number-above", text, { above: 0 });
  return null;
}

/** The frame as it is typed; where nobody framed the mark, the place proposed for it or all of the photograph. */
export function readRegion(read: TypedReader, typed: Typed, photograph: DraftPhotograph): Region {
  const { sha256, proposed } = photograph;
  const fallback = proposed ?? wholeOf(photograph);
  const part = (name: "x" | "y" | "width" | "height" | "turn"): number => {
    const text = tidyLine(typed[photographField(sha256, name)] ?? "");
    return text === "" ? fallback[name] : Number(text);
  };
  const region = {
    x: part("x"),
    y: part("y"),
    width: part("width"),
    height: part("height"),
    turn: part("turn"),
  };
  const checked = checkRegion(region, photograph, photographField(sha256, "x"));
  if (checked.ok) return checked.value;
  read.errors.push(checked.error);
  return fallback;
}
