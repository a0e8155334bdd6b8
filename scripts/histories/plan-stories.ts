import type { ActingMember } from "#core/members/member";
import { type Random, randomFrom } from "../../seed/render/random.ts";
import { castFor, shuffled } from "./people.ts";
import { FATES, type Fate, type Story, type Subject } from "./story.ts";
import { AGES, tellStory } from "./tell-story.ts";
import { createChooser } from "./write-words.ts";

/** How many entries meet each fate; whichever are left are verified. */
export type Counts = Readonly<Partial<Record<Fate, number>>>;

export const DEMO_COUNTS: Counts = {
  "under review": 35,
  disputed: 12,
  dismissed: 3,
  "sent back": 4,
  "upheld in part": 1,
  appealed: 1,
  "appeal waiting": 1,
  "not accepted": 12,
  superseded: 6,
  withdrawn: 5,
  "locked for a week": 1,
};

/**
 * A story for each entry, the same ones for the same seed.
 * @param kept slugs of entries that must stay where look-ups find them
 * @param relied slugs of entries that are to be verified, and to stay so
 */
export function planStories(
  subjects: readonly Subject[],
  members: readonly ActingMember[],
  {
    counts,
    kept,
    relied = new Set(),
    seed,
  }: {
    readonly counts: Counts;
    readonly kept: ReadonlySet<string>;
    readonly relied?: ReadonlySet<string>;
    readonly seed: string;
  },
): readonly Story[] {
  const random = randomFrom(seed);
  const choose = createChooser(random);
  const fates = drawFates(subjects, members, { counts, kept, relied }, random);
  const stories = subjects.map((subject): Story => {
    const { fate, instead } = fates.get(subject.slug) ?? { fate: "verified", instead: "" };
    const own = randomFrom(`${seed}/${subject.slug}`);
    const [least, most] = AGES[fate];
    const age = own.between(least, most) * 24;
    const setting = { subject, random: own, choose, taken: new Set<string>() };
    const cast = castFor(subject, members, own);
    return { entry: subject.slug, fate, age, steps: tellStory({ setting, cast, fate, age, instead }) };
  });
  // Those of which something is told last, so that the last tells whether all were.
  return [...stories].sort((a, b) => Number(a.fate === "verified") - Number(b.fate === "verified"));
}

type Drawn = { readonly fate: Fate; readonly instead: string };

function drawFates(
  subjects: readonly Subject[],
  members: readonly ActingMember[],
  {
    counts,
    kept,
    relied,
  }: {
    readonly counts: Counts;
    readonly kept: ReadonlySet<string>;
    readonly relied: ReadonlySet<string>;
  },
  random: Random,
): ReadonlyMap<string, Drawn> {
  const drawn = new Map<string, Drawn>();
  const left = new Map(FATES.map((fate) => [fate, counts[fate] ?? 0]));
  const give = (slug: string, fate: Fate, instead = "") => {
    drawn.set(slug, { fate, instead });
    left.set(fate, (left.get(fate) ?? 0) - 1);
  };
  const order = shuffled(subjects, random);
  for (const slug of relied) give(slug, "verified");
  const unborne = order.filter((subject) => !drawn.has(subject.slug) && !canBeVerified(subject, members));
  for (const [i, { slug }] of unborne.entries()) give(slug, i % 2 === 0 ? "under review" : "not accepted");
  for (const subject of order) {
    const instead = kept.has(subject.slug) || drawn.has(subject.slug) ? undefined : standsInstead(subject);
    const other = order.find(({ slug }) => slug === instead);
    if (!other || drawn.has(other.slug) || !isContestable(subject, members)) continue;
    if ((left.get("superseded") ?? 0) <= 0) break;
    give(subject.slug, "superseded", other.slug);
    give(other.slug, "verified");
  }
  for (const fate of FATES.filter((each) => each !== "verified" && each !== "superseded"))
    for (const subject of order) {
      if ((left.get(fate) ?? 0) <= 0) break;
      if (drawn.has(subject.slug) || (fate === "withdrawn" && kept.has(subject.slug))) continue;
      if (fate === "under review" || fate === "not accepted" || isContestable(subject, members))
        give(subject.slug, fate);
    }
  return drawn;
}

/** The entry that a relation names as the one of which this is a variant, or which came after it. */
const standsInstead = ({ content }: Subject): string | undefined =>
  (
    content.relations.find(({ kind }) => kind === "variant of") ??
    content.relations.find(({ kind }) => kind === "followed by")
  )?.entry;

function canBeVerified(subject: Subject, members: readonly ActingMember[]): boolean {
  const { has } = subject;
  const borne = has.impressions >= 2 || has.citations >= 1;
  return borne && castFor(subject, members, randomFrom(subject.slug)).reviewers.length >= 3;
}

/** Are there three voters who are no moderators, so that every moderator is free to judge? */
const isContestable = (subject: Subject, members: readonly ActingMember[]): boolean =>
  castFor(subject, members, randomFrom(subject.slug)).only >= 3;
