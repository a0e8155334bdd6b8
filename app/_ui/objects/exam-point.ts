import { checklistOf } from "#core/object-files/checklist";
import type { FileImage } from "#core/object-files/kept-file";
import type { ObjectFile } from "#core/object-files/object-file";
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

/** The points of the file's checklist, with what came of each. @param newId of what is not answered yet */
export function pointsOf(
  { family, observations, photographs }: ObjectFile,
  newId: () => string,
): readonly ExamPoint[] {
  return checklistOf(family).points.map(({ id, lookFor, why, source, options }) => {
    const noted = observations.find(({ point }) => point === id);
    return {
      id,
      lookFor,
      why,
      source,
      options: options.map((each) => ({ id: each.id, says: each.says })),
      item: noted?.id ?? newId(),
      observed: noted?.observed ?? null,
      option: noted?.option ?? "",
      value: noted?.value ?? "",
      note: noted?.note ?? "",
      photographs: photographs
        .filter((each) => each.of === "point" && each.item === id)
        .map(({ sha256, width, height }) => ({ sha256, width, height })),
    };
  });
}
