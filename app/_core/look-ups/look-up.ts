import type { EntrySummary } from "../entries/entry.ts";
import type { Photograph } from "../photographs/photograph.ts";
import type { Region } from "../photographs/region.ts";
import type { Finding } from "../similarity/findings.ts";
import type { FoundBy } from "../similarity/fuse.ts";
import type { Likeness } from "../similarity/likeness.ts";
import type { Knowledge } from "./knowledge.ts";

/** The stages a look-up passes, in order, as they are reported while it runs. */
export const STAGES = ["received", "decoded", "embedded", "searched", "done"] as const;
export type Stage = (typeof STAGES)[number];

/** Who framed the mark: the person who asked, the network that finds marks, or nobody, and all of the photograph was looked up. */
export type FramedBy = "person" | "proposal" | "nobody";

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
};

/** A look-up with its kept answer and the versions that gave it. */
export type LookUpView = {
  readonly id: string;
  readonly query: {
    readonly sha256: string;
    readonly width: number;
    readonly height: number;
    readonly region: Region;
    readonly framedBy: FramedBy;
  };
  /** What was known besides the photograph. */
  readonly asked: Knowledge;
  readonly model: string;
  readonly noneFits: boolean;
  readonly matches: readonly LookUpMatch[];
  readonly timings: Timings;
  readonly createdAt: string;
  /** When it is deleted; null when its owner keeps it. */
  readonly expiresAt: string | null;
  /** How many photographs were searched. */
  readonly searched: number;
};
