import type { Knowledge } from "../look-ups/knowledge.ts";
import type { Region } from "../photographs/region.ts";
import type { QuestionEvent } from "./question.ts";

/** A photograph of the look-up that a question was published from, and the terms on which it is shown. */
export type QuestionPhotograph = {
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly region: Region;
  readonly licence: string;
  readonly credit: string;
};

/** A question as it is kept: what it was published with, and everything that happened to it, oldest first. */
export type KeptQuestion = {
  readonly id: string;
  /** Id of the look-up it came from, which may be gone; null once the question is withdrawn. */
  readonly lookUp: string | null;
  /** What was known besides the photographs. */
  readonly asked: Knowledge;
  /** None once it is withdrawn. */
  readonly photographs: readonly QuestionPhotograph[];
  readonly events: readonly QuestionEvent[];
};
