import canonicalize from "canonicalize";
import type { MakerContent } from "#core/entries/maker";
import type { Prisma } from "./generated/client.ts";
import { interval } from "./rows.ts";

type Tx = Prisma.TransactionClient;

/**
 * Records makers and who followed whom; one that says nothing new is left alone.
 * @returns how many were new or changed
 */
export async function recordMakers(tx: Tx, makers: readonly MakerContent[]): Promise<number> {
  const known = await tx.maker.findMany({
    where: { slug: { in: makers.map((m) => m.slug) } },
    include: { predecessors: { include: { predecessor: { select: { slug: true } } } } },
  });
  const bySlug = new Map(known.map((row) => [row.slug, row]));
  let changed = 0;
  const succeeding: MakerContent[] = [];
  for (const maker of makers) {
    const row = bySlug.get(maker.slug);
    const active = interval(maker.active);
    const data = {
      slug: maker.slug,
      name: maker.name,
      kind: maker.kind,
      place: maker.place,
      trades: [...maker.trades],
      active: maker.active,
      activeEarliest: active?.earliest ?? null,
      activeLatest: active?.latest ?? null,
      otherNames: maker.otherNames as unknown as Prisma.InputJsonValue,
      note: maker.note,
      sources: [...maker.sources],
    };
    if (!row) await tx.maker.create({ data });
    else if (sameMaker(row, data, maker)) continue;
    else await tx.maker.update({ where: { id: row.id }, data });
    changed++;
    succeeding.push(maker);
  }
  await recordSuccessions(tx, succeeding);
  return changed;
}

function sameMaker(
  row: Prisma.MakerGetPayload<{
    include: { predecessors: { include: { predecessor: { select: { slug: true } } } } };
  }>,
  data: Record<string, unknown>,
  maker: MakerContent,
): boolean {
  const { id: _id, createdAt: _created, predecessors, ...stored } = row;
  const follows = predecessors.map((p) => p.predecessor.slug).sort();
  const how = predecessors[0]?.how ?? null;
  return (
    canonicalize(stored) === canonicalize(data) &&
    canonicalize(follows) === canonicalize([...maker.follows].sort()) &&
    (maker.follows.length === 0 || how === maker.followsHow)
  );
}

async function recordSuccessions(tx: Tx, makers: readonly MakerContent[]): Promise<void> {
  const slugs = makers.flatMap((m) => [m.slug, ...m.follows]);
  const rows = await tx.maker.findMany({ where: { slug: { in: slugs } }, select: { id: true, slug: true } });
  const ids = new Map(rows.map((r) => [r.slug, r.id]));
  for (const maker of makers) {
    const successorId = idOf(ids, maker.slug);
    await tx.makerSuccession.deleteMany({ where: { successorId } });
    for (const slug of new Set(maker.follows))
      await tx.makerSuccession.create({
        data: { successorId, predecessorId: idOf(ids, slug), how: maker.followsHow ?? "succession" },
      });
  }
}

function idOf(ids: ReadonlyMap<string, string>, slug: string): string {
  const id = ids.get(slug);
  if (id === undefined) throw new Error(`Maker ${slug} is not recorded.`);
  return id;
}
