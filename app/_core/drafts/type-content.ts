import type { EntryContent } from "../entries/entry.ts";
import { CITATION_PARTS, citationPart } from "../entries/read-citation.ts";
import type { Photograph } from "../photographs/photograph.ts";
import type { Typed } from "../questions/typed-text.ts";
import {
  citationField,
  type PhotographPart,
  photographField,
  RELATION_FIELDS,
  type RelationField,
} from "./draft-fields.ts";

/** What would be typed into the form to say what a revision says; fields that would be empty are left out. */
export function typeContent(content: EntryContent, photographs: readonly Photograph[]): Typed {
  const size = content.sizeMm;
  const fields: Record<string, string> = {
    title: content.title,
    kind: content.kind,
    field: content.field ?? "",
    maker: content.maker ?? "",
    maker_part: content.makerPart ?? "",
    description: content.description,
    words: content.words,
    emblem: content.emblem,
    frame: content.frame,
    technique: content.technique ?? "",
    material: content.material,
    place_on_object: content.placeOnObject,
    colours: content.colours.join("; "),
    size_mm: size ? `${size.width} x ${size.height}` : "",
    period: content.period ?? "",
    period_from_reason: content.periodFromReason,
    period_to_reason: content.periodToReason,
    distinguish: content.distinguish,
    reproductions: content.reproductions,
    sources: content.sources.join("\n"),
  };
  for (const [field, kind] of Object.entries(RELATION_FIELDS) as [RelationField, string][])
    fields[field] = content.relations
      .filter((relation) => relation.kind === kind)
      .map(({ entry }) => entry)
      .join("; ");
  for (const [i, citation] of content.citations.entries())
    for (const part of CITATION_PARTS) fields[citationField(i + 1, part)] = citationPart(citation, part);
  for (const photograph of photographs)
    for (const [part, text] of Object.entries(typePhotograph(photograph)) as [PhotographPart, string][])
      fields[photographField(photograph.sha256, part)] = text;
  return Object.fromEntries(Object.entries(fields).filter(([, text]) => text !== ""));
}

function typePhotograph(photograph: Photograph): Record<PhotographPart, string> {
  const { region, shows, credit, licence, impression, pixelsPerMm } = photograph;
  return {
    shows,
    credit,
    licence,
    impression: impression === null ? "" : String(impression),
    pixels_per_mm: pixelsPerMm === null ? "" : String(pixelsPerMm),
    x: String(region.x),
    y: String(region.y),
    width: String(region.width),
    height: String(region.height),
    turn: String(region.turn),
  };
}
