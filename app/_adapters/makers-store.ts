import type { MakerContent } from "#core/entries/maker";
import type { Succession } from "#core/entries/vocabulary";
import type { Makers } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { interval, summaryInclude, toMakerSummary, toSummary } from "./rows.ts";

/** Trigram likeness from which a word counts as misspelt. */
const NEARLY = 0.5;

/** Makers as they are read. */
export function createMakers({ prisma }: Database): Makers {
  const counts = async (ids: readonly string[]): Promise<ReadonlyMap<string, number>> => {
    const rows = await prisma.$queryRaw<{ maker_id: string; n: number }[]>`
      SELECT revisions.maker_id, count(*)::int AS n FROM entries
      JOIN revisions ON revisions.id = entries.current_revision_id
      WHERE entries.listed AND revisions.maker_id = ANY (${[...ids]}::uuid[]) GROUP BY 1`;
    return new Map(rows.map((row) => [row.maker_id, row.n]));
  };
  return {
    async bySlug(slug) {
      const row = await prisma.maker.findUnique({
        where: { slug },
        include: {
          predecessors: { include: { predecessor: true }, orderBy: { predecessorId: "asc" } },
          successors: { include: { successor: true }, orderBy: { successorId: "asc" } },
        },
      });
      if (!row) return null;
      const neighbours = [
        ...row.predecessors.map((s) => s.predecessor),
        ...row.successors.map((s) => s.successor),
      ];
      const [entries, count] = await Promise.all([
        prisma.entry.findMany({
          where: { listed: true, currentRevision: { makerId: row.id } },
          include: summaryInclude,
          orderBy: [{ currentRevision: { earliest: { sort: "asc", nulls: "last" } } }, { slug: "asc" }],
        }),
        counts(neighbours.map((m) => m.id)),
      ]);
      const otherNames = row.otherNames as unknown as MakerContent["otherNames"];
      return {
        summary: toMakerSummary(row, entries.length),
        note: row.note,
        otherNames: otherNames.map(({ period, name }) => ({ period: interval(period || null), name })),
        sources: row.sources,
        predecessors: row.predecessors.map(({ how, predecessor: m }) => ({
          how: how as Succession,
          maker: toMakerSummary(m, count.get(m.id) ?? 0),
        })),
        successors: row.successors.map(({ how, successor: m }) => ({
          how: how as Succession,
          maker: toMakerSummary(m, count.get(m.id) ?? 0),
        })),
        entries: entries.map(toSummary),
      };
    },
    async list(words) {
      const found = await withWords(words);
      const rows = await prisma.maker.findMany({
        ...(found === null ? {} : { where: { id: { in: [...found] } } }),
        orderBy: [{ name: "asc" }, { slug: "asc" }],
        take: 1000,
      });
      const count = await counts(rows.map((r) => r.id));
      return rows.map((row) => toMakerSummary(row, count.get(row.id) ?? 0));
    },
  };

  /** Makers that hold every word anywhere, or one nearly like it in their names, place or trades; null for no words. */
  async function withWords(words: string): Promise<readonly string[] | null> {
    const asked = words.split(/\s+/).filter((word) => word !== "");
    if (asked.length === 0) return null;
    const rows = await prisma.$queryRaw<{ id: string }[]>`
      SELECT makers.id FROM makers
      CROSS JOIN LATERAL (SELECT
        retrieval.plain(concat_ws(' ', name, other_names::text, place, array_to_string(trades, ' '))) AS facts,
        retrieval.plain(note) AS note) AS said
      WHERE NOT EXISTS (
        SELECT FROM unnest(${asked}::text[]) AS word
        WHERE strpos(said.facts, retrieval.plain(word)) = 0
          AND strpos(said.note, retrieval.plain(word)) = 0
          AND (length(word) < 4 OR word_similarity(retrieval.plain(word), said.facts) < ${NEARLY}))`;
    return rows.map((row) => row.id);
  }
}
