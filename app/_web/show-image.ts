import { may } from "#core/permissions";
import { isSha256, REDUCED_WIDTHS, type ReducedWidth } from "#core/photographs/limits";
import { maySeeImage } from "#usecases/may-see-image";
import { findSharedFile } from "#usecases/object-files/find-object-file";
import { actor, signedInMember } from "./actor.ts";
import { live } from "./live.ts";

/** The bytes behind a name never change, so a browser may keep them; it must not share a look-up's with others. */
const KEEP = "private, max-age=31536000, immutable";

/** Serves an image, whole or reduced to one of the offered widths as WebP; never enlarged. */
export async function showImage(
  sha256: string,
  width: string | null,
  known: string | null,
): Promise<Response> {
  const wanted = width === null ? null : REDUCED_WIDTHS.find((w) => String(w) === width);
  if (!isSha256(sha256) || wanted === undefined) return new Response(null, { status: 404 });
  const wired = await live();
  if ((await wired.contents.isHiddenImage(sha256)) && !may(await actor(), "hide content"))
    return new Response(null, { status: 410, headers: { "cache-control": "no-store" } });
  if (!(await maySeeImage(wired, sha256, await signedInMember()))) return new Response(null, { status: 404 });
  return sendImage(sha256, wanted, known);
}

/** An image of a file that is shared by a link, to who has the link. */
export async function showSharedImage(
  key: string,
  sha256: string,
  width: string | null,
  known: string | null,
): Promise<Response> {
  const wanted = width === null ? null : REDUCED_WIDTHS.find((w) => String(w) === width);
  if (!isSha256(sha256) || wanted === undefined) return new Response(null, { status: 404 });
  const wired = await live();
  const kept = await findSharedFile(wired, key);
  if (!kept || !(await wired.objectImages.has(kept.id, sha256))) return new Response(null, { status: 404 });
  return sendImage(sha256, wanted, known);
}

async function sendImage(
  sha256: string,
  wanted: ReducedWidth | null,
  known: string | null,
): Promise<Response> {
  const tag = `"${sha256}-${wanted ?? "whole"}"`;
  if (known === tag)
    return new Response(null, { status: 304, headers: { etag: tag, "cache-control": KEEP } });
  const shown = await (await live()).pictures.show(sha256, wanted);
  if (!shown) return new Response(null, { status: 404 });
  return new Response(new Uint8Array(shown.bytes), {
    headers: {
      "content-type": shown.type,
      "cache-control": KEEP,
      etag: tag,
      "x-content-type-options": "nosniff",
      "content-security-policy": "default-src 'none'; sandbox",
    },
  });
}
