import type { FieldError } from "#core/field-error";
import { fail, ok, type Result } from "#core/result";
import type { EntryHistory } from "#core/review/entry-history";
import { historyOf } from "#core/review/evolve";
import type { Trails } from "../_usecases/ports/review.ts";
import { compareWithTrails } from "./compare-with-trails.ts";
import type { Database } from "./database.ts";
import { Prisma } from "./generated/client.ts";
import { appendLinks, readLinks } from "./trail-links.ts";
import { untraced } from "./untraced-entries.ts";
import { readTrails, writeTrails } from "./write-trails.ts";

type Tx = Prisma.TransactionClient;

/** How often a change is decided anew because another process got the number first. */
const TRIES = 8;

/** Many who vote at once wait for the entry's row, or for the embedded engine's one connection. */
const PATIENCE = { maxWait: 60_000, timeout: 60_000 };

/** Trails in the database, and the histories they amount to. */
export function createTrails({ prisma }: Database): Trails {
  return {
    change: (entry, decide) => again(() => prisma.$transaction((tx) => change(tx, entry, decide), PATIENCE)),
    async history(slug) {
      const row = await prisma.entry.findUnique({ where: { slug }, select: { id: true } });
      if (!row) return null;
      const traced = (await readTrails(prisma, [row.id])).get(row.id);
      return { id: row.id, slug, history: historyOf(traced?.events ?? []) };
    },
    idOf: async (slug) =>
      (await prisma.entry.findUnique({ where: { slug }, select: { id: true } }))?.id ?? null,
    links: async (trail) => (await readLinks(prisma, [trail])).get(trail) ?? [],
    async names(after, limit) {
      const rows = await prisma.$queryRaw<{ trail: string }[]>`
        SELECT DISTINCT trail FROM trail_links WHERE ${after}::text IS NULL OR trail > ${after}
        ORDER BY trail LIMIT ${limit}`;
      return rows.map(({ trail }) => trail);
    },
    append: (trail, events) =>
      again(() =>
        prisma.$transaction(async (tx) => {
          await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtext(${trail}))`;
          const last = await tx.trailLink.findFirst({ where: { trail }, orderBy: { number: "desc" } });
          await appendLinks(tx, [{ trail, last, events }]);
        }, PATIENCE),
      ),
    compare: (entries) => compareWithTrails(prisma, entries),
    lacking: (limit) => untraced(prisma, limit),
  };
}

async function change(
  tx: Tx,
  entry: string,
  decide: Parameters<Trails["change"]>[1],
): Promise<Result<EntryHistory, FieldError>> {
  const [row] = await tx.$queryRaw<{ id: string }[]>`SELECT id FROM entries WHERE slug = ${entry} FOR UPDATE`;
  const traced = row && (await readTrails(tx, [row.id])).get(row.id);
  if (!traced) return fail({ field: "entry", rule: "entry-not-here", received: entry });
  const before = historyOf(traced.events);
  const decided = decide(before);
  if (!decided.ok) return decided;
  if (decided.value.length === 0) return ok(before);
  const [after] = await writeTrails(tx, [{ traced, events: decided.value }]);
  return ok(after ?? before);
}

/** Does it anew when a number was taken meanwhile, by a process that had not waited for the row. */
export async function again<T>(work: () => Promise<T>): Promise<T> {
  for (let tried = 1; ; tried++) {
    try {
      return await work();
    } catch (error) {
      if (!isTaken(error) || tried === TRIES) throw error;
    }
  }
}

const isTaken = (error: unknown): boolean =>
  error instanceof Prisma.PrismaClientKnownRequestError && error.code === "P2002";
