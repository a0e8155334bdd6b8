import { live } from "./live.ts";

/** Serves one of the demo's photographs to try. */
export async function showPhotographToTry(name: string): Promise<Response> {
  const bytes = await (await live()).photographsToTry.bytes(name);
  if (!bytes) return new Response(null, { status: 404 });
  return new Response(new Uint8Array(bytes), {
    headers: {
      "content-type": "image/webp",
      "cache-control": "public, max-age=86400",
      "x-content-type-options": "nosniff",
    },
  });
}
