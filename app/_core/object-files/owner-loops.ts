import { parseInterval } from "../dates/parse.ts";
import type { ProvenanceEvent } from "./object-file.ts";

/** Two ways of writing one name: case, spaces and a full stop more or less. */
export const sameOwner = (a: string, b: string): boolean => plain(a) === plain(b);
const plain = (name: string) =>
  name
    .toLowerCase()
    .replace(/[\s.,]+/g, " ")
    .trim();

type Step = Pick<ProvenanceEvent, "id" | "from" | "to" | "date" | "passage">;

/**
 * Owners who had it from each other with nothing to say who had it first: from oneself, or in a circle of steps that are
 * not all dated apart. Somebody who dated steps show to have had it back later is no loop.
 * @returns the owners in words, "A → B → A"; null when there is none
 */
export function loopClosedBy(events: readonly Step[], event: Step): string | null {
  const steps = [...events.filter(({ id }) => id !== event.id), event].filter(isTransfer);
  if (!isTransfer(event)) return null;
  const path = wayBack(steps, event, [event]);
  if (path === null || areDatedApart(path)) return null;
  return [...path.map(({ from }) => from), event.from].join(" → ");
}

/** What is lent comes back. */
const isTransfer = ({ from, to, passage }: Step) =>
  plain(from) !== "" && plain(to) !== "" && passage !== "lent to";

/** Steps that lead from whoever got it last back to whoever gave it first. */
function wayBack(steps: readonly Step[], first: Step, path: readonly Step[]): readonly Step[] | null {
  const last = path.at(-1) ?? first;
  if (sameOwner(last.to, first.from)) return path;
  for (const next of steps) {
    if (path.includes(next) || !sameOwner(next.from, last.to)) continue;
    if (path.some(({ from }) => sameOwner(from, next.from))) continue;
    const found = wayBack(steps, first, [...path, next]);
    if (found) return found;
  }
  return null;
}

/** Are all steps dated, and no two at the same time? Then one of them was the last, and the circle is none. */
function areDatedApart(path: readonly Step[]): boolean {
  if (path.length < 2) return false;
  const spans = path
    .map(({ date }) => spanOf(date))
    .sort((a, b) => ((a?.from ?? "") < (b?.from ?? "") ? -1 : 1));
  return spans.every((span, i) => {
    const before = spans[i - 1];
    return span !== null && (i === 0 || (before != null && before.to < span.from));
  });
}

/** Days of four-digit years compare as texts. */
function spanOf(date: string | null): { readonly from: string; readonly to: string } | null {
  const read = date === null ? null : parseInterval(date);
  if (!read?.ok || read.value.firstDay === null || read.value.lastDay === null) return null;
  return { from: read.value.firstDay, to: read.value.lastDay };
}
