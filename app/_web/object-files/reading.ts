import { notFound, redirect } from "next/navigation";
import { cache } from "react";
import { anomaliesOf } from "#core/object-files/anomalies";
import { estimateOf, evidenceOf } from "#core/object-files/evidence";
import { cautionsOf } from "#core/object-files/finding";
import type { AccessEvent, FileLine, FileVersion, KeptFile } from "#core/object-files/kept-file";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import { noticesOf } from "#core/object-files/notices";
import type { ObjectFile } from "#core/object-files/object-file";
import { checkProvenance } from "#core/object-files/provenance";
import type { Typed } from "#core/questions/typed-text";
import { type FoundFile, findObjectFile, findSharedFile } from "#usecases/object-files/find-object-file";
import { matchedEntries } from "#usecases/object-files/matched-entries";
import { actor, signedInMember } from "../actor.ts";
import { parseEntryQuery } from "../entry-query.ts";
import { keepForm } from "../kept-forms.ts";
import { live } from "../live.ts";

export { keptForm } from "../kept-forms.ts";

/** Keeps what a page was asked for while somebody signs in. @returns its name */
export const keepTypedForm = (typed: Typed): string => keepForm({ errors: [], typed });

type WithEntries = { readonly entries: readonly MatchedEntry[] };

/** A file that whoever asks may see, with what the reference says today of its matched entries; else null. */
export const objectFile = cache(async (id: string): Promise<(FoundFile & WithEntries) | null> => {
  const wired = await live();
  const found = await findObjectFile(wired, id, await signedInMember());
  return found && { ...found, entries: await matchedEntries(wired, found.kept.content) };
});

/** A file by the key of its link. */
export const sharedFile = cache(
  async (key: string): Promise<({ readonly kept: KeptFile } & WithEntries) | null> => {
    const wired = await live();
    const kept = await findSharedFile(wired, key);
    return kept && { kept, entries: await matchedEntries(wired, kept.content) };
  },
);

/** Files that a member owns or is invited into. */
export const objectFilesOf = async (member: string): Promise<readonly FileLine[]> =>
  (await live()).objectFiles.list(member, 600);

/** Files that anybody may read; with an entry, those in which a mark is matched with it. */
export const publishedFiles = async (entry: string | null = null): Promise<readonly FileLine[]> =>
  (await live()).objectFiles.published(entry, entry === null ? 60 : 6);

/** Everything that happened to a file, for who may see it. */
export async function historyOfFile(id: string): Promise<{
  readonly versions: readonly FileVersion[];
  readonly accesses: readonly AccessEvent[];
}> {
  const { objectFiles, objectAccess } = await live();
  const [versions, accesses] = await Promise.all([objectFiles.versions(id), objectAccess.history(id)]);
  return { versions, accesses };
}

/** What a version said. */
export const contentOfVersion = async (id: string, number: number): Promise<ObjectFile | null> =>
  (await live()).objectFiles.contentOf(id, number);

/** The year in which a date is reckoned: nothing was made after it. */
export const thisYear = (): number => new Date().getUTCFullYear();

/** Entries shown to choose from. */
const CHOICES = 6;

/** Entries whose title or letters have these words, with the revisions that a mark may be pinned to. */
export async function entriesByWords(words: string) {
  const { query } = parseEntryQuery({ words });
  const { entries, revisions } = await live();
  const { entries: found } = await entries.search(query);
  const all = await Promise.all(
    found.slice(0, CHOICES).map(async (entry) => {
      const [view, lines] = await Promise.all([entries.bySlug(entry.slug), revisions.list(entry.slug)]);
      const numbers = lines.map(({ number }) => number);
      return view ? [{ entry, shown: view.revision.number, revisions: numbers }] : [];
    }),
  );
  return all.flat();
}

/** When the object was made, and what says so. */
export function datedOf(content: ObjectFile, entries: readonly MatchedEntry[]) {
  return {
    evidence: evidenceOf(content, entries),
    estimate: estimateOf(content, entries, thisYear()),
  };
}

/** Everything that follows from what a file says, by what the reference says today. */
export function derivedOf(content: ObjectFile, entries: readonly MatchedEntry[]) {
  const { evidence, estimate } = datedOf(content, entries);
  const found = anomaliesOf(content, entries);
  return {
    estimate,
    evidence,
    found,
    cautions: cautionsOf(content, found, estimate),
    check: checkProvenance(content, evidence, estimate),
    notices: noticesOf(content, entries),
  };
}

/** A new item's id, given to the form that adds it: sent twice, it is added once. */
export const newItemId = (): string => crypto.randomUUID();

/**
 * A file for one of its pages: who is not signed in is led to signing in and back, and to whom it is not open, there
 * is no such page.
 */
export async function fileForPage(id: string, part: string): Promise<FoundFile & WithEntries> {
  const found = await objectFile(id);
  if (found) return found;
  if ((await actor()).kind === "reader")
    redirect(`/sign-in?next=${encodeURIComponent(`/objects/${id}${part === "" ? "" : `/${part}`}`)}`);
  notFound();
}
