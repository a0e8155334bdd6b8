import type { KeptLookUp } from "#core/look-ups/kept-look-up";
import type { Blobs, Clock, LookUps } from "./ports.ts";

type Needs = { readonly lookUps: LookUps; readonly blobs: Blobs };

/**
 * The owner deletes a look-up, its photographs with it.
 * @returns false when there is no such look-up of this owner
 */
export async function deleteLookUp(
  needs: Needs,
  { id, ownerHash }: { id: string; ownerHash: string },
): Promise<boolean> {
  const kept = await needs.lookUps.find(id);
  if (kept?.ownerHash !== ownerHash) return false;
  await forget(needs, kept);
  return true;
}

/**
 * Deletes look-ups whose time is over, with their photographs.
 * @returns how many were deleted
 */
export async function forgetExpired(needs: Needs & { readonly clock: Clock }, limit = 200): Promise<number> {
  const ids = await needs.lookUps.expired(needs.clock.now(), limit);
  for (const id of ids) {
    const kept = await needs.lookUps.find(id);
    if (kept) await forget(needs, kept);
  }
  return ids.length;
}

/** A photograph goes only when nothing else shows the same image. */
async function forget({ lookUps, blobs }: Needs, { id, photographs }: KeptLookUp): Promise<void> {
  await lookUps.remove(id);
  for (const sha256 of new Set(photographs.map((each) => each.sha256)))
    if (!(await lookUps.imageInUse(sha256))) await blobs.remove(sha256);
}
