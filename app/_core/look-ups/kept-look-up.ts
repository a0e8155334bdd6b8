import type { Finding } from "../similarity/findings.ts";
import type { FoundBy } from "../similarity/fuse.ts";
import type { Hit } from "../similarity/rank.ts";
import type { AskedPhotograph } from "./asked-photographs.ts";
import type { Knowledge } from "./knowledge.ts";
import type { Timings } from "./look-up.ts";

/** One entry of a kept answer; `hit` is null for an entry without a photograph. */
export type KeptMatch = {
  readonly entry: string;
  readonly hit: Hit | null;
  readonly photographsNear: number;
  readonly foundBy: FoundBy;
  readonly findings: readonly Finding[];
  /**
   * The hit of each photograph of the mark, by its place among those asked with, from 1, when there were several;
   * `hit` is the nearest of them, with the similarity that they come to together.
   */
  readonly seen?: readonly { readonly photograph: number; readonly hit: Hit }[];
  /** That query and entry show the same mark; null when the model was not calibrated. */
  readonly probability: number | null;
};

/** The kept answer of one of the further marks on an object. */
type KeptMark = {
  readonly mark: number;
  readonly noneFits: boolean;
  readonly noneProbability: number | null;
  readonly matches: readonly KeptMatch[];
};

/** A maker, by its slug, of whom several entries answer several marks. */
export type KeptMaker = {
  readonly maker: string;
  readonly answers: readonly { readonly mark: number; readonly match: KeptMatch }[];
};

/** A look-up as it is kept: what was asked, what was answered, and by which versions. */
export type KeptLookUp = {
  readonly id: string;
  readonly ownerHash: string;
  /** 1 to 6, in the order in which they were given. */
  readonly photographs: readonly AskedPhotograph[];
  /** What was known besides the photographs, of the first mark. */
  readonly asked: Knowledge;
  readonly model: string;
  /** The answer of the first mark. */
  readonly noneFits: boolean;
  /** That no entry shows the mark; null when the model was not calibrated. */
  readonly noneProbability: number | null;
  /** The day of the calibration that the probabilities come from, YYYY-MM-DD; null as above. */
  readonly calibrated: string | null;
  readonly searched: number;
  readonly matches: readonly KeptMatch[];
  readonly otherMarks: readonly KeptMark[];
  readonly makers: readonly KeptMaker[];
  readonly timings: Timings;
  readonly createdAt: Date;
  readonly expiresAt: Date | null;
};
