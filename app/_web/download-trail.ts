import { isSlug } from "#core/entries/slug";
import { trailOfEntry } from "./reading-reviews.ts";

/** Sends an entry's trail as a file of JSON: an array of its links. */
export async function downloadTrail(slug: string): Promise<Response> {
  const links = isSlug(slug) ? await trailOfEntry(slug) : null;
  if (!links) return new Response(null, { status: 404 });
  return new Response(`${JSON.stringify(links, null, 2)}\n`, {
    headers: {
      "content-type": "application/json; charset=utf-8",
      "content-disposition": `attachment; filename="${slug}-trail.json"`,
      "cache-control": "no-cache",
      "x-content-type-options": "nosniff",
    },
  });
}
