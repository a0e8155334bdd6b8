import type { Draft } from "#core/drafts/draft";
import { threeWays, type Version } from "#core/drafts/three-ways";
import type { Merged } from "#core/entries/merge-content";
import type { RevisionLine, RevisionView } from "#core/entries/revision";
import type { Revisions } from "./ports.ts";

/** What came while a draft was being written. */
export type Meanwhile = Merged & {
  readonly base: Version;
  readonly theirs: Version;
  /** The newest revision, which the draft does not know. */
  readonly newest: RevisionLine;
};

/**
 * Looks whether somebody revised the entry while a draft of it was being written.
 * @returns null when the draft was made from the newest revision
 */
export async function weighMeanwhile(revisions: Revisions, draft: Draft): Promise<Meanwhile | null> {
  if (draft.entry === null) return null;
  const lines = await revisions.list(draft.entry);
  const newest = lines.at(-1);
  if (!newest || draft.parents.includes(newest.id)) return null;
  // The latest revision that the draft knows: what came after it is what its author has not seen.
  const known = lines.findLast(({ id }) => draft.parents.includes(id));
  const [base, theirs] = await Promise.all([
    known ? revisions.shown(draft.entry, known.number) : null,
    revisions.shown(draft.entry, newest.number),
  ]);
  if (!base || !theirs) return null;
  const [from, came] = [versionOf(base), versionOf(theirs)];
  return { ...threeWays(draft, from, came), base: from, theirs: came, newest };
}

const versionOf = ({ view }: RevisionView): Version => ({
  content: view.content,
  photographs: view.photographs,
});
