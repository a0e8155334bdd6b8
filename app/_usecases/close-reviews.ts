import type { EntryCommand } from "#core/review/command";
import { decide } from "#core/review/decide";
import type { ReviewLists, TracedEntry, Trails } from "./ports/review.ts";
import type { Clock } from "./ports.ts";

/**
 * Closes every review that is over.
 * @returns slugs of the entries whose review was closed
 */
export async function closeReviews(
  needs: { readonly trails: Trails; readonly reviewLists: ReviewLists; readonly clock: Clock },
  limit = 200,
): Promise<readonly string[]> {
  const closed: string[] = [];
  for (const entry of await needs.reviewLists.due(needs.clock.now(), limit))
    if ((await closeReview(needs, entry)).closed) closed.push(entry);
  return closed;
}

/** Closes what is over of one entry: how it stands then, null when there is none, and whether anything was over. */
export async function closeReview(
  { trails, clock }: { readonly trails: Trails; readonly clock: Clock },
  entry: string,
): Promise<{ readonly stands: TracedEntry | null; readonly closed: boolean }> {
  const stands = await trails.history(entry);
  const close: EntryCommand = { type: "close what is over", at: clock.now().toISOString() };
  // Looked at without holding the entry first, since nearly always nothing is over.
  if (!stands || isEmpty(decide(stands.history, close))) return { stands, closed: false };
  let closed = false;
  const after = await trails.change(entry, (history) => {
    const decided = decide(history, close);
    closed = !isEmpty(decided);
    return decided;
  });
  return { stands: after.ok ? { ...stands, history: after.value } : stands, closed };
}

const isEmpty = (decided: ReturnType<typeof decide>): boolean => !decided.ok || decided.value.length === 0;
