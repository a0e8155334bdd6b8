import type { EntrySummary } from "../entries/entry.ts";
import type { Photograph } from "../photographs/photograph.ts";
import type { Finding } from "../similarity/findings.ts";
import type { FoundBy } from "../similarity/fuse.ts";
import type { Likeness } from "../similarity/likeness.ts";
import type { AgainstMaker } from "../similarity/makers-of-marks.ts";
import type { AskedPhotograph } from "./asked-photographs.ts";
import { type Knowledge, NOTHING_KNOWN } from "./knowledge.ts";

/** The stages a look-up passes, in order, as they are reported while it runs. */
export const STAGES = ["received", "decoded", "embedded", "searched", "done"] as const;
export type Stage = (typeof STAGES)[number];

/** Milliseconds spent in each part of a look-up. */
export type Timings = {
  readonly decode: number;
  readonly preprocess: number;
  readonly embed: number;
  readonly search: number;
};

/** One line of the answer to a look-up. */
export type LookUpMatch = {
  readonly entry: EntrySummary;
  readonly foundBy: FoundBy;
  /** The photograph of the entry that resembles the query most; null, with its likeness, for an entry without one. */
  readonly photograph: Photograph | null;
  readonly similarity: number | null;
  readonly likeness: Likeness | null;
  /** Degrees clockwise by which the query was turned to match. */
  readonly turn: number;
  /** How many of the entry's photographs are among the nearest. */
  readonly photographsNear: number;
  /** What is known besides the photograph that agrees with the entry, and what speaks against it. */
  readonly findings: readonly Finding[];
  /** How each photograph of the mark sees the entry; `similarity` above is what they come to together. */
  readonly seen: readonly SeenBy[];
  /** That query and entry show the same mark, 0 to 1; null when the model was not calibrated. */
  readonly probability: number | null;
};

/** What one of the photographs asked with makes of an entry. */
export type SeenBy = {
  /** Its place among the photographs asked with, from 1. */
  readonly photograph: number;
  /** The photograph of the entry that resembles it most. */
  readonly reference: string;
  readonly similarity: number;
  readonly turn: number;
};

/** The ranking of one mark, from the photographs that show it. */
export type MarkAnswer = {
  readonly mark: number;
  readonly noneFits: boolean;
  /** That no entry shows the mark, 0 to 1; null when the model was not calibrated. */
  readonly noneProbability: number | null;
  readonly matches: readonly LookUpMatch[];
};

/** A maker with entries like several of the marks on one object. */
export type MakerOfMarks = {
  readonly maker: { readonly slug: string; readonly name: string; readonly place: string };
  /** Which entry of the maker answers which mark, by mark; at most one for each, and no entry twice. */
  readonly answers: readonly { readonly mark: number; readonly match: LookUpMatch }[];
  readonly against: readonly AgainstMaker[];
};

/** A look-up with its kept answer and the versions that gave it. */
export type LookUpView = {
  readonly id: string;
  /** The first of the photographs asked with. */
  readonly query: AskedPhotograph;
  /** All of them, in the order in which they were given. */
  readonly photographs: readonly AskedPhotograph[];
  /** What was known besides the photographs, of the first mark. */
  readonly asked: Knowledge;
  readonly model: string;
  /** The answer of the first mark. */
  readonly noneFits: boolean;
  /** That no entry shows the mark, 0 to 1; null when the model was not calibrated. */
  readonly noneProbability: number | null;
  /** The day of the calibration that gave the probabilities, YYYY-MM-DD; null as above. */
  readonly calibrated: string | null;
  readonly matches: readonly LookUpMatch[];
  /** The answers of the other marks on the object, when there are any. */
  readonly otherMarks: readonly MarkAnswer[];
  /** Makers that use several of the marks, likeliest first; nothing when one mark was asked. */
  readonly makers: readonly MakerOfMarks[];
  readonly timings: Timings;
  readonly createdAt: string;
  /** When it is deleted; null when its owner keeps it. */
  readonly expiresAt: string | null;
  /** How many photographs were searched. */
  readonly searched: number;
};

/** The answer of every mark, by its number. */
export function marksOf(view: LookUpView): readonly MarkAnswer[] {
  const { noneFits, noneProbability, matches, otherMarks } = view;
  return [{ mark: 1, noneFits, noneProbability, matches }, ...otherMarks];
}

/** A look-up as if one of its marks alone had been asked of: its photographs keep their places. */
export function viewOfMark(
  view: LookUpView,
  { mark, noneFits, noneProbability, matches }: MarkAnswer,
): LookUpView {
  const query = view.photographs.find((each) => each.mark === mark) ?? view.query;
  const asked = mark === 1 ? view.asked : NOTHING_KNOWN;
  return { ...view, query, asked, noneFits, noneProbability, matches, otherMarks: [], makers: [] };
}

/** The photograph asked with that resembles an entry most, by its place from 1; null without photographs. */
export function nearestAsked({ seen }: LookUpMatch): number | null {
  const [first, ...others] = seen;
  if (!first) return null;
  return others.reduce((best, each) => (each.similarity > best.similarity ? each : best), first).photograph;
}
