<<<<<<< HEAD
import { contentOf } from "#core/entries/content-of";
import { hiddenFields, servedContent } from "#core/entries/hidden-texts";
=======
>>>>>>> e5f6776cac6ebef93f4388819a1e0797d07a3e35
import type { Entries } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { searchEntries } from "./entry-search.ts";
import { viewOf } from "./entry-view.ts";
import { summaryInclude, toPhotograph, toSummary } from "./rows.ts";

/** Entries whose makers are told at once; more than that would have to be measured one by one. */
const OF_MAKERS = 2000;

/** Entries as they are read. */
export function createEntries(database: Database): Entries {
  const { prisma } = database;
  return {
    async bySlug(slug) {
      const row = await prisma.entry.findUnique({ where: { slug }, include: summaryInclude });
<<<<<<< HEAD
      const revision = row?.currentRevision;
      if (!row || !revision) return null;
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
        summary: toSummary(row),
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
=======
      return row?.currentRevision ? viewOf(database, row, row.currentRevision) : null;
>>>>>>> e5f6776cac6ebef93f4388819a1e0797d07a3e35
    },
    async summaries(ids) {
      const rows = await prisma.entry.findMany({
        where: { id: { in: [...ids] }, currentRevisionId: { not: null } },
        include: summaryInclude,
      });
      return new Map(rows.map((row) => [row.id, toSummary(row)]));
    },
    async photographs(ids) {
      const rows = await prisma.photograph.findMany({ where: { id: { in: [...ids] }, hidden: false } });
      return new Map(rows.map((row) => [row.id, toPhotograph(row)]));
    },
    async ofMakers(ids) {
      const rows = await prisma.$queryRaw<{ id: string; slug: string }[]>`
        SELECT entries.id, makers.slug FROM entries
        JOIN revisions ON revisions.id = entries.current_revision_id
        JOIN makers ON makers.id = revisions.maker_id
        WHERE entries.listed AND makers.id IN (
          SELECT given.maker_id FROM entries AS asked JOIN revisions AS given ON given.id = asked.current_revision_id
          WHERE asked.id = ANY (${[...ids]}::uuid[]))
        ORDER BY entries.id LIMIT ${OF_MAKERS}`;
      return new Map(rows.map(({ id, slug }) => [id, slug]));
    },
    search: (query) => searchEntries(database, query),
    async counts() {
      const [row] = await prisma.$queryRaw<{ entries: number; photographs: number; makers: number }[]>`
        SELECT (SELECT count(*)::int FROM entries WHERE current_revision_id IS NOT NULL AND listed) AS entries,
          (SELECT count(*)::int FROM photographs) AS photographs,
          (SELECT count(*)::int FROM makers) AS makers`;
      return row ?? { entries: 0, photographs: 0, makers: 0 };
    },
  };
}
