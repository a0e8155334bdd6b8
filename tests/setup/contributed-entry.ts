import type { EntryContent } from "#core/entries/entry";
import type { Photograph } from "#core/photographs/photograph";
import type { Live } from "#web/live";
import { drawMark } from "./scratch-reference.ts";

let marks = 0;

/** A photograph of a mark of its own, kept as a draft keeps one. */
export async function keptPhotograph(
  { images, blobs }: Pick<Live, "images" | "blobs">,
  impression: number,
): Promise<Omit<Photograph, "id">> {
  const read = await images.read(await drawMark(++marks), "reference");
  if (!read.ok) throw new Error(read.error.rule);
  const { bytes, width, height } = read.value;
  const { sha256 } = await blobs.put(bytes);
  const region = { x: 20, y: 20, width: 180, height: 160, turn: 0 };
  const terms = { shows: "", licence: "CC BY 4.0", credit: "Ansa Hollin", impression };
  return { sha256, width, height, region, pixelsPerMm: null, ...terms };
}

/** What an entry says that has everything a review asks for. */
export const contentNamed = (title: string): EntryContent => ({
  title,
  kind: "mark",
  field: "metalwork",
  maker: null,
  makerPart: null,
  words: "ZWYX",
  emblem: "anchor",
  frame: "",
  technique: "stamped",
  material: "pewter",
  placeOnObject: "",
  colours: [],
  sizeMm: null,
  period: "1790/1812",
  periodFromReason: "",
  periodToReason: "",
  description: "An anchor in an oval.",
  distinguish: "",
  reproductions: "",
  relations: [],
  citations: [],
  sources: [],
});
