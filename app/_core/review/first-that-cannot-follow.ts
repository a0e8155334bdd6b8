import type { EntryEvent } from "./entry-event.ts";
import { evolve, NO_HISTORY } from "./evolve.ts";

/** The place, from 1, of the first event that changes nothing where it stands, and so can't have followed; else null. */
export function firstThatCannotFollow(events: readonly EntryEvent[]): number | null {
  let history = NO_HISTORY;
  for (const [i, event] of events.entries()) {
    const after = evolve(history, event);
    if (after === history) return i + 1;
    history = after;
  }
  return null;
}
