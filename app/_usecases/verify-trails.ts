import type { EntryEvent } from "#core/review/entry-event";
import { firstThatCannotFollow } from "#core/review/first-that-cannot-follow";
import { type Broken, checkChain, eventOf, type Hash } from "#core/trail/chain";
import type { Link } from "#core/trail/link";
import type { Trails } from "./ports/review.ts";

/** What is wrong with one trail: its first broken link, or what differs beside it. */
export type TrailFault = {
  readonly trail: string;
  readonly broken: Broken | null;
  readonly differs: readonly string[];
};

export type Verified = {
  readonly trails: number;
  readonly links: number;
  readonly faults: readonly TrailFault[];
};

/** Trails between two questions. */
const AT_ONCE = 100;
const ENTRY = "entry:";

/**
 * Checks trails link by link, whether each event can have followed those before, and whether entries and revisions
 * still are what their trails say.
 * @param entry slug of the one entry to check; null for all, and for what concerns no entry
 * @returns null when there is no such entry
 */
export async function verifyTrails(
  { trails, hash }: { readonly trails: Trails; readonly hash: Hash },
  entry: string | null = null,
): Promise<Verified | null> {
  const id = entry === null ? null : await trails.idOf(entry);
  if (entry !== null && id === null) return null;
  const only = id === null ? null : ENTRY + id;
  const faults: TrailFault[] = [];
  const counts = { trails: 0, links: 0 };
  let after: string | null = null;
  for (;;) {
    const names: readonly string[] = only === null ? await trails.names(after, AT_ONCE) : [only];
    for (const trail of names) {
      const links = await trails.links(trail);
      counts.trails += 1;
      counts.links += links.length;
      const broken = check(trail, links, hash);
      if (broken) faults.push({ trail, broken, differs: [] });
    }
    const whole = names.filter(
      (name) => name.startsWith(ENTRY) && !faults.some(({ trail }) => trail === name),
    );
    for (const { id, slug, differs } of await trails.compare(whole.map((name) => name.slice(ENTRY.length))))
      faults.push({
        trail: `${ENTRY}${id}`,
        broken: null,
        differs: differs.map((what) => `${slug}: ${what}`),
      });
    after = names.at(-1) ?? null;
    if (only !== null || names.length < AT_ONCE) break;
  }
  if (only === null)
    for (const { slug } of await trails.lacking(AT_ONCE))
      faults.push({ trail: slug, broken: null, differs: [`${slug}: it has no trail`] });
  return { ...counts, faults };
}

function check(trail: string, links: readonly Link[], hash: Hash): Broken | null {
  const broken = checkChain(trail, links, hash);
  if (broken || !trail.startsWith(ENTRY)) return broken;
  const number = firstThatCannotFollow(links.map((link) => eventOf<EntryEvent>(link)));
  return number === null ? null : { number, why: "does not follow" };
}
