import type { MatchedEntry } from "#core/object-files/matched-entry";
import type { ObjectFile } from "#core/object-files/object-file";
import type { Entries } from "../ports.ts";

/** What the reference says today of the entries that a file's marks match, and of those that were near. */
export async function matchedEntries(
  { entries }: { readonly entries: Pick<Entries, "matched"> },
  { marks }: ObjectFile,
): Promise<readonly MatchedEntry[]> {
  const slugs = new Set(
    marks.flatMap(({ match }) => (match ? [match.entry, ...match.near.map(({ entry }) => entry)] : [])),
  );
  return entries.matched([...slugs]);
}
