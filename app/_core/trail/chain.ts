import type { By } from "../review/entry-event.ts";
import type { Link } from "./link.ts";

/** SHA-256, hexadecimal, over the canonical JSON (RFC 8785) of a value. */
export type Hash = (value: unknown) => string;

/** Something that happened, as a trail takes it: all its other fields become the payload. */
export type TrailEvent = { readonly type: string; readonly at: string; readonly by: By };

/** The first link that is not what it must be, and why. */
export type Broken = {
  readonly number: number;
  readonly why: "gap" | "another trail" | "wrong previous" | "wrong hash" | "does not follow";
};

/** Everything of a link but its own hash: what the hash is taken over. */
function hashed({ trail, number, type, at, by, payload, previous }: Omit<Link, "hash">): unknown {
  return { trail, number, type, at, by: { id: by.id, name: by.name }, payload, previous };
}

/** Links for events that come after `last`; null when they are the first. */
export function linksAfter(
  trail: string,
  last: Pick<Link, "number" | "hash"> | null,
  events: readonly TrailEvent[],
  hash: Hash,
): readonly Link[] {
  const links: Link[] = [];
  for (const { type, at, by, ...payload } of events) {
    const before = links.at(-1) ?? last;
    const facts = {
      trail,
      number: (before?.number ?? 0) + 1,
      type,
      at,
      by: { id: by.id, name: by.name },
      payload,
      previous: before?.hash ?? null,
    };
    links.push({ ...facts, hash: hash(hashed(facts)) });
  }
  return links;
}

/** The event that a link keeps. */
export function eventOf<E extends TrailEvent>({ type, at, by, payload }: Omit<Link, "hash">): E {
  return { ...(payload as object), type, at, by } as E;
}

/** The first broken link of a trail, its links in order; null when the chain is whole. */
export function checkChain(trail: string, links: readonly Link[], hash: Hash): Broken | null {
  let before: Link | null = null;
  for (const link of links) {
    const number: number = (before?.number ?? 0) + 1;
    if (link.number !== number) return { number, why: "gap" };
    if (link.trail !== trail) return { number, why: "another trail" };
    if (link.previous !== (before?.hash ?? null)) return { number, why: "wrong previous" };
    if (hash(hashed(link)) !== link.hash) return { number, why: "wrong hash" };
    before = link;
  }
  return null;
}
