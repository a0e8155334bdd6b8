import { contentOf } from "#core/entries/content-of";
import { servedContent } from "#core/entries/hidden-texts";
import type { EntryState } from "#core/entries/vocabulary";
import { marksSaid } from "#core/object-files/marks-said";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import type { Database } from "./database.ts";
import type { Prisma } from "./generated/client.ts";

const select = {
  slug: true,
  state: true,
  hiddenTexts: true,
  currentRevision: { include: { maker: true } },
} as const satisfies Prisma.EntrySelect;
type Row = Prisma.EntryGetPayload<{ select: typeof select }>;

/** What object files ask of entries, all of them at once, without what only the entries' own pages show. */
export async function entriesMatched(
  { prisma }: Database,
  slugs: readonly string[],
): Promise<readonly MatchedEntry[]> {
  if (slugs.length === 0) return [];
  const rows = await prisma.entry.findMany({
    where: { slug: { in: [...slugs] }, currentRevisionId: { not: null } },
    orderBy: { slug: "asc" },
    select,
  });
  return rows.flatMap((row) => (row.currentRevision ? [toMatched(row, row.currentRevision)] : []));
}

function toMatched(row: Row, revision: NonNullable<Row["currentRevision"]>): MatchedEntry {
  const content = servedContent(contentOf(revision.content), revision.id, row.hiddenTexts);
  const { title, kind, makerPart, period, placeOnObject, reproductions, relations } = content;
  return {
    ...{ slug: row.slug, title, kind, state: row.state as EntryState, makerPart, period, placeOnObject },
    reproductions,
    maker: revision.maker && { slug: revision.maker.slug, name: revision.maker.name },
    revision: { id: revision.id, number: revision.number, contentHash: revision.contentHash },
    imitatedBy: relations.flatMap((each) => (each.kind === "imitated by" ? [each.entry] : [])),
    marksPerObject: marksSaid([content.description, content.distinguish]),
  };
}
