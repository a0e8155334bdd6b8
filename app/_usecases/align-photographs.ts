import type { FieldError } from "#core/field-error";
import type { Alignment } from "#core/photographs/alignment";
import { ok, type Result } from "#core/result";
import type { Aligner, Blobs, Clock, Entries, LookUps } from "./ports.ts";

type Needs = {
  readonly lookUps: LookUps;
  readonly entries: Entries;
  readonly blobs: Blobs;
  readonly aligner: Aligner;
  readonly clock: Clock;
};

type Question = {
  readonly lookUp: string;
  /** Which of the photographs asked with, from 1. */
  readonly asked: number;
  readonly entry: string;
  readonly photograph: string;
};

/**
 * Lays a photograph of a look-up over one of an entry's.
 * @returns null when the look-up, the entry or those photographs of them are not there, or the look-up's time is over;
 * as the error, that too many wait, or that it took too long
 */
export async function alignPhotographs(
  needs: Needs,
  asked: Question,
): Promise<Result<Alignment | null, FieldError>> {
  const [kept, entry] = await Promise.all([
    needs.lookUps.find(asked.lookUp),
    needs.entries.bySlug(asked.entry),
  ]);
  if (!kept || (kept.expiresAt !== null && kept.expiresAt <= needs.clock.now())) return ok(null);
  const photograph = entry?.photographs.find(({ id }) => id === asked.photograph);
  const own = kept.photographs[asked.asked - 1];
  if (!photograph || !own) return ok(null);
  const [query, reference] = await Promise.all([
    needs.blobs.get(own.sha256),
    needs.blobs.get(photograph.sha256),
  ]);
  if (!query || !reference) return ok(null);
  return needs.aligner.align(
    { sha256: own.sha256, bytes: query, region: own.region },
    { sha256: photograph.sha256, bytes: reference, region: photograph.region },
  );
}
