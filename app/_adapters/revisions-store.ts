import type { RevisionLine } from "#core/entries/revision";
import type { Revisions } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { viewOf } from "./entry-view.ts";
import type { Prisma } from "./generated/client.ts";
import { summaryInclude } from "./rows.ts";

const lineSelect = {
  id: true,
  number: true,
  contentHash: true,
  createdAt: true,
  createdBy: true,
  summary: true,
  parents: { select: { parent: { select: { number: true } } } },
} as const satisfies Prisma.RevisionSelect;

type LineRow = Prisma.RevisionGetPayload<{ select: typeof lineSelect }>;

/** The largest number that the column holds. */
const MOST = 2 ** 31 - 1;

/** Revisions of entries, as they are read. */
export function createRevisions(database: Database): Revisions {
  const { prisma } = database;
  const list = async (slug: string) =>
    (
      await prisma.revision.findMany({
        where: { entry: { slug } },
        orderBy: { number: "asc" },
        select: lineSelect,
      })
    ).map(toLine);
  return {
    list,
    async shown(slug, number) {
      if (!Number.isInteger(number) || number < 1 || number > MOST) return null;
      const row = await prisma.entry.findUnique({ where: { slug }, include: summaryInclude });
      if (!row?.currentRevision) return null;
      const revision = await prisma.revision.findUnique({
        where: { entryId_number: { entryId: row.id, number } },
        include: { ...summaryInclude.currentRevision.include },
      });
      if (!revision) return null;
      const lines = await list(slug);
      const line = lines.find((each) => each.number === number);
      if (!line) return null;
      const newest = Math.max(...lines.map((each) => each.number));
      return { view: await viewOf(database, row, revision), line, shown: row.currentRevision.number, newest };
    },
  };
}

function toLine({ parents, createdAt, ...row }: LineRow): RevisionLine {
  return {
    ...row,
    createdAt: createdAt.toISOString(),
    parents: parents.map(({ parent }) => parent.number).toSorted((a, b) => a - b),
  };
}
