import { historyOf } from "#core/review/evolve";
import { type EntryProjection, projectionOf } from "#core/review/project";
import type { KeptBeside } from "../_usecases/ports/review.ts";
import { contentHash } from "./add-revision.ts";
import { canonicalJson } from "./canonical-json.ts";
import type { Prisma } from "./generated/client.ts";
import { toPhotograph } from "./rows.ts";
import { readTrails, type Traced } from "./write-trails.ts";

type Tx = Prisma.TransactionClient;

const include = {
  photographs: { where: { hidden: true }, select: { id: true }, orderBy: { id: "asc" } },
  revisions: {
    orderBy: { number: "asc" },
    include: { photographs: { include: { photograph: true }, orderBy: { position: "asc" } } },
  },
} as const satisfies Prisma.EntryInclude;
type Row = Prisma.EntryGetPayload<{ include: typeof include }>;

/** Compares what entries' rows and revisions say with what their trails amount to. */
export async function compareWithTrails(tx: Tx, ids: readonly string[]): Promise<readonly KeptBeside[]> {
  const rows = await tx.entry.findMany({ where: { id: { in: [...ids] } }, include, orderBy: { id: "asc" } });
  const traces = await readTrails(tx, ids);
  const gone = ids.filter((id) => !rows.some((row) => row.id === id));
  const compared = rows.map((row) => ({
    id: row.id,
    slug: row.slug,
    differs: [...rowDiffers(row, traces.get(row.id)), ...revisionsDiffer(row, traces.get(row.id))],
  }));
  return [...compared, ...gone.map((id) => ({ id, slug: id, differs: ["the entry is gone"] }))].filter(
    ({ differs }) => differs.length > 0,
  );
}

function rowDiffers(row: Row, traced: Traced | undefined): readonly string[] {
  const wanted = projectionOf(historyOf(traced?.events ?? []));
  const found = foundIn(row);
  const names = Object.keys(wanted) as (keyof EntryProjection)[];
  return names.filter((name) => canonicalJson(plain(wanted[name])) !== canonicalJson(plain(found[name])));
}

/** Lists of what is hidden and of who voted, in no order. */
const plain = (value: unknown): unknown => (Array.isArray(value) ? [...value].sort() : value);

function foundIn(row: Row): EntryProjection {
  const { reviewRevisionId, reviewSubmittedAt, reviewClosesAt } = row;
  return {
    state: row.state as EntryProjection["state"],
    shown: row.currentRevisionId,
    verified: row.verifiedRevisionId,
    field: row.field as EntryProjection["field"],
    review:
      reviewRevisionId === null
        ? null
        : {
            revision: reviewRevisionId,
            submittedAt: reviewSubmittedAt?.toISOString() ?? "",
            closesAt: reviewClosesAt?.toISOString() ?? null,
            voters: row.reviewVoters,
          },
    challenged: row.challenged,
    replacedBy: row.replacedBy,
    merged: row.merged,
    locked: row.locked,
    listed: row.listed,
    hiddenTexts: row.hiddenTexts,
    hiddenPhotographs: row.photographs.map(({ id }) => id),
  };
}

function revisionsDiffer(row: Row, traced: Traced | undefined): readonly string[] {
  const recorded = new Map(historyOf(traced?.events ?? []).revisions.map((each) => [each.id, each]));
  const differing = row.revisions.flatMap(({ id, number, content, photographs, contentHash: kept }) => {
    const hash = contentHash(
      row.slug,
      content,
      photographs.map(({ photograph }) => toPhotograph(photograph)),
    );
    const known = recorded.get(id);
    if (!known) return [`revision ${number} is not in the trail`];
    return hash === known.contentHash && kept === known.contentHash ? [] : [`revision ${number} was changed`];
  });
  const there = new Set(row.revisions.map(({ id }) => id));
  const gone = [...recorded.values()].filter(({ id }) => !there.has(id));
  return [...differing, ...gone.map(({ number }) => `revision ${number} is gone`)];
}
