import type { Photograph } from "./photograph.ts";

/** Everything that is said of a photograph of an entry, as one text: equal texts, equal photographs. */
export function fingerprint(
  photograph: Omit<Photograph, "id" | "width" | "height"> & { readonly entry: string },
): string {
  const { entry, sha256, region, pixelsPerMm, shows, licence, credit, impression } = photograph;
  const { x, y, width, height, turn } = region;
  const said = [entry, sha256, x, y, width, height, turn, pixelsPerMm, shows, licence, credit];
  // Left out when it is not said, so that what was recorded before there were impressions stays what it was.
  return JSON.stringify(impression === null ? said : [...said, impression]);
}
