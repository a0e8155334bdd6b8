import { contentOf } from "#core/entries/content-of";
import type { EntryView } from "#core/entries/entry";
import { hiddenFields, servedContent } from "#core/entries/hidden-texts";
import type { Database } from "./database.ts";
import { type SummaryRow, summaryInclude, toPhotograph, toSummary } from "./rows.ts";

type Revision = NonNullable<SummaryRow["currentRevision"]>;

/** An entry as its page shows it, by any of its revisions, with everything that the revision refers to. */
export async function viewOf({ prisma }: Database, row: SummaryRow, revision: Revision): Promise<EntryView> {
  const content = servedContent(contentOf(revision.content), revision.id, row.hiddenTexts);
  const [photographs, related] = await Promise.all([
    prisma.revisionPhotograph.findMany({
      where: { revisionId: revision.id },
      include: { photograph: true },
      orderBy: { position: "asc" },
    }),
    prisma.entry.findMany({
      where: { slug: { in: content.relations.map((r) => r.entry) }, currentRevisionId: { not: null } },
      include: summaryInclude,
    }),
  ]);
  const bySlug = new Map(related.map((r) => [r.slug, toSummary(r)]));
  return {
    summary: toSummary({ ...row, currentRevision: revision }),
    content,
    photographs: photographs.flatMap(({ photograph }) =>
      photograph.hidden ? [] : [toPhotograph(photograph)],
    ),
    hidden: {
      photographs: photographs.filter(({ photograph }) => photograph.hidden).length,
      texts: hiddenFields(revision.id, row.hiddenTexts),
    },
    relations: content.relations.flatMap(({ kind, entry }) => {
      const summary = bySlug.get(entry);
      return summary ? [{ kind, entry: summary }] : [];
    }),
    revision: {
      id: revision.id,
      number: revision.number,
      contentHash: revision.contentHash,
      createdAt: revision.createdAt.toISOString(),
      createdBy: revision.createdBy,
    },
  };
}
