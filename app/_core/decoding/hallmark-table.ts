import type { Strength } from "./reliability-policy.ts";
import type { Sourced } from "./sourced.ts";
import cycles from "./tables/hallmark-cycles.json" with { type: "json" };
import marks from "./tables/hallmark-marks.json" with { type: "json" };

/** One run through the alphabet at one office. */
export type LetterCycle = Sourced & {
  readonly office: string;
  /** The years in which the first and the last letter came into use. */
  readonly first: number;
  readonly last: number;
  readonly letters: string;
  readonly style: string;
  /** Month and day on which the letter changed. */
  readonly changeover: string;
  /** A letter that was struck for part of a year; those after it begin with the cycle's arithmetic. */
  readonly short?: { readonly letter: string; readonly from: string; readonly to: string };
};

/** A mark other than the letter, or a rule: an office's, a standard's, the duty mark. */
export type HallmarkRow = Sourced & {
  readonly kind: string;
  readonly id: string;
  readonly office?: string;
  readonly mark?: string;
  readonly imported?: string;
  readonly metal?: string;
  readonly fineness?: string;
  readonly grams?: number;
  readonly edtf?: string;
  readonly strength?: Strength;
  readonly reason?: string;
  readonly exceptions?: string;
};

export const CYCLES = cycles as readonly LetterCycle[];
const MARKS = marks as readonly HallmarkRow[];

const ofKind = (kind: string): readonly HallmarkRow[] => MARKS.filter((row) => row.kind === kind);
export const OFFICES = ofKind("office");
export const STANDARDS = ofKind("standard");
/** Marks besides that were struck in a limited time. */
export const OTHER_MARKS = ofKind("rule").filter(({ mark }) => mark !== undefined);
export const HALLMARK_REMARKS = ofKind("rule").filter(({ mark }) => mark === undefined);
export const EXEMPTIONS = ofKind("exempt");

/** The styles of letters in the table, in the order in which they first came into use. */
export const LETTER_STYLES: readonly string[] = [
  ...new Set(CYCLES.toSorted((a, b) => a.first - b.first).map(({ style }) => style)),
];

/** Is a letter of this style a small one? Court hand is written small and read as either. */
export const isSmall = (style: string): boolean => style.includes("small");
