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

/** Owners who had it from each other, in a circle that a step is part of. */
export type OwnerLoop<S> = {
  /** In words, "A → B → A". */
  readonly owners: string;
  readonly events: readonly S[];
  /** All steps are dated apart, so that somebody had it back later: no contradiction. */
  readonly isDatedApart: boolean;
};

/** The circle of owners that a step is part of; null when there is none. */
export function loopOf<S extends Step>(events: readonly S[], event: S): OwnerLoop<S> | null {
  if (!isTransfer(event)) return null;
  const steps = [...events.filter(({ id }) => id !== event.id), event].filter(isTransfer);
  const path = wayBack(steps, event);
  if (path === null) return null;
  const owners = [...path.map(({ from }) => from), event.from].join(" → ");
  return { owners, events: path, isDatedApart: areDatedApart(path) };
}

/** What is lent comes back. */
const isTransfer = ({ from, to, passage }: Step) =>
  plain(from) !== "" && plain(to) !== "" && passage !== "lent to";

/** The fewest steps from who got it back to who gave it: each owner is looked at once, however tangled the chain is. */
function wayBack<S extends Step>(steps: readonly S[], first: S): readonly S[] | null {
  const waiting: (readonly S[])[] = [[first]];
  const seen = new Set([plain(first.to)]);
  const giver = plain(first.from);
  const named = steps.map((step) => ({ step, from: plain(step.from), to: plain(step.to) }));
  for (let path = waiting.shift(); path; path = waiting.shift()) {
    const owner = plain(path.at(-1)?.to ?? "");
    if (owner === giver) return path;
    for (const { step, from, to } of named) {
      if (from !== owner || seen.has(to)) continue;
      seen.add(to);
      waiting.push([...path, step]);
    }
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
