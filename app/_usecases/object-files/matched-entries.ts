import type { EntryView } from "#core/entries/entry";
import { marksSaid } from "#core/object-files/marks-said";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import type { ObjectFile } from "#core/object-files/object-file";
import type { Entries } from "../ports.ts";

/** What the reference says today of the entries that a file's marks match, and of those that were near. */
export async function matchedEntries(
  { entries }: { readonly entries: Entries },
  { marks }: ObjectFile,
): Promise<readonly MatchedEntry[]> {
  const slugs = new Set(
    marks.flatMap(({ match }) => (match ? [match.entry, ...match.near.map(({ entry }) => entry)] : [])),
  );
  const views = await Promise.all([...slugs].sort().map((slug) => entries.bySlug(slug)));
  return views.flatMap((view) => (view ? [toMatched(view)] : []));
}

function toMatched({ summary, content, relations, revision }: EntryView): MatchedEntry {
  const { slug, title, kind, state, maker } = summary;
  return {
    slug,
    title,
    kind,
    state,
    maker: maker && { slug: maker.slug, name: maker.name },
    makerPart: content.makerPart,
    revision: { id: revision.id, number: revision.number, contentHash: revision.contentHash },
    period: content.period,
    placeOnObject: content.placeOnObject,
    reproductions: content.reproductions,
    imitatedBy: relations.flatMap((each) => (each.kind === "imitated by" ? [each.entry.slug] : [])),
    marksPerObject: marksSaid([content.description, content.distinguish]),
  };
}
