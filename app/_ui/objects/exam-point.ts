import type { FileImage } from "#core/object-files/kept-file";
import type { Observed } from "#core/object-files/vocabulary";

/** A point of a checklist with what came of it so far. */
export type ExamPoint = {
  readonly id: string;
  readonly lookFor: string;
  readonly why: string;
  /** Where that stands. */
  readonly source: string;
  readonly options: readonly { readonly id: string; readonly says: string }[];
  /** Id of its observation: the one that is there, or one for the first. */
  readonly item: string;
  readonly observed: Observed | null;
  readonly option: string;
  readonly value: string;
  readonly note: string;
  readonly photographs: readonly FileImage[];
};
