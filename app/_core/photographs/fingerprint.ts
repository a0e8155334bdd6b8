import type { Photograph } from "./photograph.ts";

/** Everything that is said of a photograph of an entry, as one text: equal texts, equal photographs. */
export function fingerprint(
  photograph: Omit<Photograph, "id" | "width" | "height"> & { readonly entry: string },
): string {
  const { entry, sha256, region, pixelsPerMm, shows, licence, credit } = photograph;
  const { x, y, width, height, turn } = region;
  return JSON.stringify([entry, sha256, x, y, width, height, turn, pixelsPerMm, shows, licence, credit]);
}
