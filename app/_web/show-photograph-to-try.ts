import { readFile } from "node:fs/promises";
import { readPhotographsToTry } from "#adapters/photographs-to-try";
import { live } from "./live.ts";

/** Serves one of the demo's photographs to try. */
export async function showPhotographToTry(name: string): Promise<Response> {
  const { demoFolder } = (await live()).environment;
  const known = demoFolder === null ? undefined : (await readPhotographsToTry(demoFolder)).get(name);
  if (!known) return new Response(null, { status: 404 });
  const bytes = await readFile(/* turbopackIgnore: true */ known.file);
  return new Response(new Uint8Array(bytes), {
    headers: {
      "content-type": "image/webp",
      "cache-control": "public, max-age=86400",
      "x-content-type-options": "nosniff",
    },
  });
}
