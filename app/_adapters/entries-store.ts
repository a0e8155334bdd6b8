import type { Entries } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { entriesMatched } from "./entries-matched.ts";
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
      return row?.currentRevision ? viewOf(database, row, row.currentRevision) : null;
    },
    matched: (slugs) => entriesMatched(database, slugs),
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
