import { joinInitials } from "#core/entries/initials";
import { type EntryPage, type EntryQuery, type Facet, PAGE_SIZE } from "#core/entries/query";
import type { Database } from "./database.ts";
import { Prisma } from "./generated/client.ts";
import { summaryInclude, toSummary } from "./rows.ts";

/** Trigram likeness above which a word counts as misspelt; "hare" and "harl" stand at 0.6. */
const NEARLY = 0.62;

type Narrowing = "words" | "kind" | "technique" | "material" | "maker" | "period";

/**
 * Entries by words (full text, and trigrams for what is misspelt or cut short) and by what they are.
 * Each facet counts what choosing another of its values would leave, under the other narrowings.
 */
export async function searchEntries({ prisma }: Database, query: EntryQuery): Promise<EntryPage> {
  const page = Math.max(1, Math.floor(query.page));
  const all = narrow(query);
  const [rows, totals, kinds, techniques, materials, makers] = await Promise.all([
    prisma.$queryRaw<{ id: string }[]>`
      SELECT entries.id ${from(query)} ${all} ORDER BY ${order(query)}, entries.slug
      LIMIT ${PAGE_SIZE} OFFSET ${(page - 1) * PAGE_SIZE}`,
    prisma.$queryRaw<{ n: number }[]>`SELECT count(*)::int AS n ${from(query)} ${all}`,
    prisma.$queryRaw<Facet[]>`
      SELECT revisions.kind AS value, count(*)::int AS count ${from(query)} ${narrow(query, "kind")}
      GROUP BY 1 ORDER BY 2 DESC, 1`,
    prisma.$queryRaw<Facet[]>`
      SELECT revisions.technique AS value, count(*)::int AS count ${from(query)} ${narrow(query, "technique")}
      AND revisions.technique IS NOT NULL GROUP BY 1 ORDER BY 2 DESC, 1`,
    prisma.$queryRaw<Facet[]>`
      SELECT revisions.material AS value, count(*)::int AS count ${from(query)} ${narrow(query, "material")}
      AND revisions.material <> '' GROUP BY 1 ORDER BY 2 DESC, 1 LIMIT 40`,
    prisma.$queryRaw<(Facet & { label: string })[]>`
      SELECT makers.slug AS value, makers.name AS label, count(*)::int AS count
      ${from(query)} ${narrow(query, "maker")} AND makers.slug IS NOT NULL GROUP BY 1, 2 ORDER BY 2 LIMIT 500`,
  ]);
  const total = totals[0]?.n ?? 0;
  const found = await prisma.entry.findMany({
    where: { id: { in: rows.map((r) => r.id) } },
    include: summaryInclude,
  });
  const byId = new Map(found.map((row) => [row.id, toSummary(row)]));
  return {
    entries: rows.flatMap(({ id }) => byId.get(id) ?? []),
    total,
    page,
    pages: Math.max(1, Math.ceil(total / PAGE_SIZE)),
    facets: { kinds, techniques, materials, makers },
  };
}

function from(query: EntryQuery): Prisma.Sql {
  const words = query.words.trim();
  return Prisma.sql`
    FROM entries
    JOIN revisions ON revisions.id = entries.current_revision_id
    LEFT JOIN makers ON makers.id = revisions.maker_id
    ${
      words === ""
        ? Prisma.empty
        : Prisma.sql`JOIN retrieval.entry_words AS words ON words.entry_id = entries.id
    CROSS JOIN (SELECT retrieval.plain(${words}) AS plain,
      websearch_to_tsquery('english', retrieval.plain(${words})) AS document) AS asked`
    }`;
}

function narrow(query: EntryQuery, except?: Narrowing): Prisma.Sql {
  const parts: Prisma.Sql[] = [Prisma.sql`entries.listed`];
  const add = (name: Narrowing, part: Prisma.Sql) => name !== except && parts.push(part);
  if (query.words.trim() !== "") add("words", matchWords(query.words));
  if (query.kind) add("kind", Prisma.sql`revisions.kind = ${query.kind}`);
  if (query.technique) add("technique", Prisma.sql`revisions.technique = ${query.technique}`);
  if (query.material) add("material", Prisma.sql`revisions.material = ${query.material}`);
  if (query.maker) add("maker", Prisma.sql`makers.slug = ${query.maker}`);
  if (query.period) {
    const { earliest, latest } = query.period;
    const known = Prisma.sql`(revisions.earliest IS NOT NULL OR revisions.latest IS NOT NULL)`;
    const begins =
      latest === null ? Prisma.empty : Prisma.sql`AND coalesce(revisions.earliest, ${latest}) <= ${latest}`;
    const ends =
      earliest === null
        ? Prisma.empty
        : Prisma.sql`AND coalesce(revisions.latest, ${earliest}) >= ${earliest}`;
    add("period", Prisma.sql`(${known} ${begins} ${ends})`);
  }
  return Prisma.sql`WHERE ${Prisma.join(parts, " AND ")}`;
}

/**
 * By whole words; by initials written together or apart; and, from four letters on, by a part of a word or by
 * trigrams, which find what is misspelt. Shorter words have too few trigrams to tell anything.
 */
function matchWords(words: string): Prisma.Sql {
  const initials = [...joinInitials(words), words.trim().toLowerCase()];
  const wanted = initials.map((i) => `% ${escapeLike(i)} %`);
  const whole = Prisma.sql`words.document @@ asked.document OR ' ' || words.plain || ' ' LIKE ANY (${wanted}::text[])`;
  if (words.trim().length < 4) return Prisma.sql`(${whole})`;
  return Prisma.sql`(${whole}
    OR (asked.plain <% words.plain AND word_similarity(asked.plain, words.plain) > ${NEARLY})
    OR words.plain LIKE '%' || ${escapeLike(words.trim().toLowerCase())} || '%')`;
}

function order(query: EntryQuery): Prisma.Sql {
  return query.words.trim() === ""
    ? Prisma.sql`revisions.title`
    : Prisma.sql`ts_rank(words.document, asked.document) + word_similarity(asked.plain, words.plain) DESC`;
}

/** A text with the pattern signs of LIKE taken at their face value. */
const escapeLike = (text: string): string => text.replace(/[\\%_]/g, "\\$&");
