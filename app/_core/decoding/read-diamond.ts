import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import {
  DIAMOND_CORNERS,
  DIAMOND_SERIES,
  type DiamondCorner,
  type DiamondPart,
  type DiamondSeries,
  lookUpDiamond,
} from "./diamond-table.ts";

/** A diamond as it stands on the object: what can be read in its corners, and in the circle on top. */
export type DiamondInput = Readonly<Partial<Record<DiamondCorner | "class", string>>>;

/** The same by what each corner holds in its series; empty where nothing can be read. */
export type DiamondReading = {
  readonly series: DiamondSeries;
  readonly parts: Readonly<Record<DiamondPart, string>>;
  readonly class: string;
};

const ROMAN = ["I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII", "XIII"];

const tidy = (text: string | undefined): string => (text ?? "").normalize("NFKC").trim().toUpperCase();
const isLetter = (text: string): boolean => /^[A-Z]$/.test(text);
const isNumber = (text: string): boolean => /^\d{1,3}$/.test(text);

/** Tells the series by where its letters stand: top and left to 1867, right and bottom from 1868 on. */
export function readDiamond(input: DiamondInput): Result<DiamondReading, FieldError> {
  const corners = new Map(DIAMOND_CORNERS.map((corner) => [corner, tidy(input[corner])]));
  for (const [corner, text] of corners)
    if (text !== "" && !isLetter(text) && !isNumber(text))
      return fail({ field: corner, rule: "diamond-corner", received: received(input[corner]) });
  const fits = (series: DiamondSeries) =>
    [...corners].every(([corner, text]) => {
      const holds = lookUpDiamond("position", corner, series)?.value;
      return text === "" || isLetter(text) === (holds === "year" || holds === "month");
    });
  if ([...corners.values()].every((text) => text === ""))
    return fail({ field: "top", rule: "diamond-empty", received: "" });
  const series = DIAMOND_SERIES.find(fits);
  if (series === undefined) {
    const said = [...corners].map(([corner, text]) => `${corner} ${text || "-"}`).join(", ");
    return fail({ field: "diamond", rule: "diamond-mixed", received: said });
  }
  const group = readClass(tidy(input.class));
  if (group === null) return fail({ field: "class", rule: "diamond-class", received: received(input.class) });
  const parts = { year: "", month: "", day: "", parcel: "" };
  for (const [corner, text] of corners) {
    const holds = lookUpDiamond("position", corner, series)?.value;
    if (holds === "year" || holds === "month" || holds === "day" || holds === "parcel") parts[holds] = text;
  }
  return ok({ series, parts, class: group });
}

/** @returns the class in Roman figures, empty when none was read, null when there is no such class */
function readClass(text: string): string | null {
  if (text === "") return "";
  const roman = /^\d{1,2}$/.test(text) ? (ROMAN[Number(text) - 1] ?? null) : text.replace(/^CLASS /, "");
  return roman !== null && ROMAN.includes(roman) ? roman : null;
}
