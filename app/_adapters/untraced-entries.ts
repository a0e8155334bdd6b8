import { contentOf } from "#core/entries/content-of";
import { whatItHas } from "#core/entries/what-it-has";
import type { Untraced } from "../_usecases/ports/review.ts";
import type { Prisma } from "./generated/client.ts";
import { toPhotograph } from "./rows.ts";

/** Entries that were recorded before there were trails, with their revisions as a trail records them. */
export async function untraced(tx: Prisma.TransactionClient, limit: number): Promise<readonly Untraced[]> {
  const ids = await tx.$queryRaw<{ id: string }[]>`
    SELECT entries.id FROM entries
    WHERE NOT EXISTS (SELECT FROM trail_links WHERE trail = 'entry:' || entries.id AND number = 1)
      AND EXISTS (SELECT FROM revisions WHERE revisions.entry_id = entries.id)
    ORDER BY entries.id LIMIT ${limit}`;
  const rows = await tx.entry.findMany({
    where: { id: { in: ids.map(({ id }) => id) } },
    orderBy: { id: "asc" },
    include: {
      revisions: {
        orderBy: { number: "asc" },
        include: {
          maker: { select: { slug: true } },
          parents: { orderBy: { parentId: "asc" } },
          photographs: { include: { photograph: true }, orderBy: { position: "asc" } },
        },
      },
    },
  });
  return rows.map(({ slug, revisions }) => ({
    slug,
    revisions: revisions.map((row) => {
      const content = contentOf(row.content);
      const photographs = row.photographs.map(({ photograph }) => toPhotograph(photograph));
      return {
        at: row.createdAt.toISOString(),
        by: row.createdBy,
        revision: {
          id: row.id,
          entry: slug,
          number: row.number,
          contentHash: row.contentHash,
          parents: row.parents.map(({ parentId }) => parentId),
          authors: row.authorId === null ? [] : [row.authorId],
          field: content.field,
          maker: row.maker?.slug ?? null,
          has: whatItHas(content, photographs),
        },
      };
    }),
  }));
}
