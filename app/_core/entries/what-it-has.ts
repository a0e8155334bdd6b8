import type { Photograph } from "../photographs/photograph.ts";
import type { RecordedRevision } from "../review/entry-event.ts";
import type { EntryContent } from "./entry.ts";

type Shown = Pick<Photograph, "licence" | "credit" | "impression">;

/** Counts in a revision what the minimum of a review asks for. */
export function whatItHas(content: EntryContent, photographs: readonly Shown[]): RecordedRevision["has"] {
  return {
    title: content.title !== "",
    description: content.description !== "",
    photographs: photographs.length,
    uncredited: photographs.filter(({ licence, credit }) => licence === "" || credit === "").length,
    impressions: new Set(photographs.map(({ impression }) => impression)).size,
    citations: content.citations.length,
  };
}
