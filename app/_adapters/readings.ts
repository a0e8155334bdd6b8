import { contentOf } from "#core/entries/content-of";
import { servedContent } from "#core/entries/hidden-texts";
import type { Kind, Technique } from "#core/entries/vocabulary";
import { ONE, SEVERAL } from "#core/reading/plain-letters";
import type { Readings } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";

/** Share of a reading's trigrams that must lie together in a transcription for it to be worth comparing. */
const NEARLY = 0.3;
/** Materials offered while one types; beyond that nobody reads them. */
const MATERIALS = 200;

/** Entries by what is written on them, and what they record besides. */
export function createReadings({ prisma }: Database): Readings {
  return {
    async find(letters, limit) {
      if (limit < 1 || limit > 200) throw new RangeError(`limit must be 1 to 200. Received ${limit}.`);
      const pattern = likePattern(letters.pattern);
      // A single letter lies somewhere in nearly every wording: it is looked for as the whole of it.
      const anywhere = letters.legible > 1 ? `%${pattern}%` : pattern;
      const exact = await prisma.$queryRaw<{ id: string }[]>`
        SELECT entry_id AS id FROM retrieval.entry_words JOIN entries ON entries.id = entry_id AND entries.listed
        WHERE letters ILIKE ${anywhere}
        ORDER BY letters ILIKE ${pattern} DESC, length(letters), entry_id
        LIMIT ${limit}`;
      if (exact.length > 0) return exact.map(({ id }) => id);
      const runs = letters.pattern.split(/[?*]+/).join(" ").trim();
      return prisma.$transaction(async (tx) => {
        await tx.$executeRaw`SELECT set_config('pg_trgm.word_similarity_threshold', ${String(NEARLY)}, true)`;
        const near = await tx.$queryRaw<{ id: string }[]>`
          SELECT entry_id AS id FROM retrieval.entry_words JOIN entries ON entries.id = entry_id AND entries.listed
          WHERE letters %> ${runs}
          ORDER BY word_similarity(${runs}, letters) DESC, length(letters), entry_id
          LIMIT ${limit}`;
        return near.map(({ id }) => id);
      });
    },
    async facts(entries) {
      const rows = await prisma.entry.findMany({
        where: { id: { in: [...entries] }, currentRevisionId: { not: null } },
        select: { id: true, hiddenTexts: true, currentRevision: true },
      });
      return new Map(
        rows.flatMap(({ id, hiddenTexts, currentRevision: revision }) => {
          if (!revision) return [];
          const { words, sizeMm } = servedContent(contentOf(revision.content), revision.id, hiddenTexts, "");
          const technique = revision.technique as Technique | null;
          return [
            [id, { words, sizeMm, technique, material: revision.material, kind: revision.kind as Kind }],
          ];
        }),
      );
    },
    async materials() {
      // From one value to the next in the index, so that it takes as long as there are materials, not revisions.
      const rows = await prisma.$queryRaw<{ material: string }[]>`
        WITH RECURSIVE each (material) AS (
          (SELECT material FROM revisions WHERE material > '' ORDER BY material LIMIT 1)
          UNION ALL
          SELECT (SELECT r.material FROM revisions AS r WHERE r.material > each.material ORDER BY r.material LIMIT 1)
          FROM each WHERE each.material IS NOT NULL
        )
        SELECT material FROM each WHERE material IS NOT NULL LIMIT ${MATERIALS}`;
      return rows.map(({ material }) => material);
    },
  };
}

/** A reading as a pattern of LIKE, with the pattern signs that it may hold taken at their face value. */
function likePattern(pattern: string): string {
  return pattern
    .replace(/[\\%_]/g, "\\$&")
    .replaceAll(ONE, "_")
    .replaceAll(SEVERAL, "%");
}
