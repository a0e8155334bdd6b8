import { decide } from "#core/review/decide";
import type { Clock, Trails } from "./ports.ts";

/**
 * Closes every review that is over.
 * @returns slugs of the entries whose review was closed
 */
export async function closeReviews(
  { trails, clock }: { readonly trails: Trails; readonly clock: Clock },
  limit = 200,
): Promise<readonly string[]> {
  const now = clock.now();
  const closed: string[] = [];
  for (const entry of await trails.due(now, limit)) {
    let events = 0;
    await trails.change(entry, (history) => {
      const decided = decide(history, { type: "close what is over", at: now.toISOString() });
      events = decided.ok ? decided.value.length : 0;
      return decided;
    });
    if (events > 0) closed.push(entry);
  }
  return closed;
}
