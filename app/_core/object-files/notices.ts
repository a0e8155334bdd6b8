import type { EntryState } from "../entries/vocabulary.ts";
import type { Notice } from "./derived.ts";
import type { MatchedEntry } from "./matched-entry.ts";
import type { MarkFound, ObjectFile } from "./object-file.ts";

/** States of an entry that a file which stands on it has to be told of. */
const TOLD: Readonly<Partial<Record<EntryState, Notice["is"]>>> = {
  superseded: "superseded",
  disputed: "disputed",
  withdrawn: "withdrawn",
  "not accepted": "not accepted",
};

/** What has become of entries since marks of the file were matched with them. */
export function noticesOf(file: ObjectFile, entries: readonly MatchedEntry[]): readonly Notice[] {
  return file.marks.flatMap((mark) => noticesOfMark(mark, entries));
}

function noticesOfMark({ id, match }: MarkFound, entries: readonly MatchedEntry[]): readonly Notice[] {
  if (match === null) return [];
  const { entry: slug, revision } = match;
  const entry = entries.find((each) => each.slug === slug);
  const items = [{ list: "marks", id } as const];
  const pinned = revision.number;
  if (!entry) return [{ is: "gone", params: { title: match.title, slug, pinned }, items }];
  const params = { title: entry.title, slug, pinned, now: entry.revision.number };
  const state = TOLD[entry.state];
  const revised = entry.revision.contentHash !== revision.contentHash;
  return [
    ...(state ? [{ is: state, params, items }] : []),
    ...(revised ? [{ is: "revised" as const, params, items }] : []),
  ];
}
