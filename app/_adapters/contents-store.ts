import { contentOf } from "#core/entries/content-of";
import { isHideable } from "#core/entries/hideable";
import type { Contents } from "../_usecases/ports/review.ts";
import { sha256OfText } from "./chance.ts";
import type { Database } from "./database.ts";
import { isUuid } from "./is-uuid.ts";

/** What of an entry's content can be hidden, and what is. */
export function createContents({ prisma }: Database): Contents {
  return {
    async hashOf(slug, what) {
      if (what.kind === "photograph") {
        if (!isUuid(what.photograph)) return null;
        const where = { id: what.photograph, entry: { slug } };
        return (await prisma.photograph.findFirst({ where, select: { sha256: true } }))?.sha256 ?? null;
      }
      if (!isUuid(what.revision) || !isHideable(what.field)) return null;
      const row = await prisma.revision.findFirst({
        where: { id: what.revision, entry: { slug } },
        select: { content: true },
      });
      const text = row && contentOf(row.content)[what.field];
      return text ? sha256OfText(text) : null;
    },
    async isHiddenImage(sha256) {
      const [row] = await prisma.$queryRaw<{ hidden: boolean }[]>`
        SELECT EXISTS (SELECT FROM photographs WHERE sha256 = ${sha256} AND hidden)
          AND NOT EXISTS (SELECT FROM photographs WHERE sha256 = ${sha256} AND NOT hidden)
          AND NOT EXISTS (SELECT FROM look_up_photographs WHERE sha256 = ${sha256})
          AND NOT EXISTS (SELECT FROM question_photographs WHERE sha256 = ${sha256}) AS hidden`;
      return row?.hidden ?? false;
    },
    async standsInstead(slug) {
      const row = await prisma.entry.findUnique({
        where: { slug },
        select: { merged: true, replacedBy: true },
      });
      return row?.merged ? row.replacedBy : null;
    },
  };
}
