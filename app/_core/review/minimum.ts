import type { RecordedRevision } from "./entry-event.ts";

/** What a revision can lack. */
export type Lack =
  | "title"
  | "field"
  | "description"
  | "photograph"
  | "licence or credit"
  | "second impression or citation";

/** What a revision lacks to go under review; its kind is always given. */
export function lacksForReview({ field, has }: RecordedRevision): readonly Lack[] {
  const lacks: readonly (readonly [Lack, boolean])[] = [
    ["title", !has.title],
    ["field", field === null],
    ["description", !has.description],
    ["photograph", has.photographs < 1],
    ["licence or credit", has.uncredited > 0],
  ];
  return lacks.flatMap(([lack, missing]) => (missing ? [lack] : []));
}

/** What it lacks to become verified: besides, two photographs of different impressions, or one and a citation. */
export function lacksForVerification(revision: RecordedRevision): readonly Lack[] {
  const { photographs, impressions, citations } = revision.has;
  const borne = photographs >= 1 && ((photographs >= 2 && impressions >= 2) || citations >= 1);
  const lacks = lacksForReview(revision);
  return borne ? lacks : [...lacks, "second impression or citation"];
}
