import type { Clock, LookUps } from "./ports.ts";

const DAY = 24 * 60 * 60 * 1000;

/**
 * The owner of a look-up keeps it, or lets it go after its time again.
 * @param days null keeps it until it is let go
 * @returns false when there is no such look-up of this owner
 */
export async function keepLookUp(
  { lookUps, clock }: { readonly lookUps: LookUps; readonly clock: Clock },
  { id, ownerHash, days }: { readonly id: string; readonly ownerHash: string; readonly days: number | null },
): Promise<boolean> {
  const kept = await lookUps.find(id);
  if (kept?.ownerHash !== ownerHash) return false;
  await lookUps.setExpiry(id, days === null ? null : new Date(clock.now().getTime() + days * DAY));
  return true;
}
