import type { Interval } from "#core/dates/interval";
import { parseInterval } from "#core/dates/parse";
import { contentOf } from "#core/entries/content-of";
import type { EntrySummary } from "#core/entries/entry";
import { servedContent } from "#core/entries/hidden-texts";
import type { MakerSummary } from "#core/entries/maker";
import type { EntryState, Kind, MakerKind, Technique } from "#core/entries/vocabulary";
import type { Photograph } from "#core/photographs/photograph";
import type { Prisma } from "./generated/client.ts";

/** What of an entry's row a line of a list needs. */
export const summaryInclude = {
  currentRevision: {
    include: {
      maker: true,
      photographs: {
        where: { photograph: { hidden: false } },
        include: { photograph: true },
        orderBy: { position: "asc" },
        take: 1,
      },
      _count: { select: { photographs: { where: { photograph: { hidden: false } } } } },
    },
  },
} as const satisfies Prisma.EntryInclude;

export type SummaryRow = Prisma.EntryGetPayload<{ include: typeof summaryInclude }>;
type PhotographRow = Prisma.PhotographGetPayload<object>;
type MakerRow = Prisma.MakerGetPayload<object>;

/** Rows hold what was parsed before it was written, so a text that no longer parses is a defect, not an input. */
export function interval(edtf: string | null): Interval | null {
  if (edtf === null) return null;
  const parsed = parseInterval(edtf);
  if (!parsed.ok) throw new Error(`A stored period can't be read: ${edtf}`);
  return parsed.value;
}

export function toSummary(row: SummaryRow): EntrySummary {
  const revision = row.currentRevision;
  if (!revision) throw new Error(`Entry ${row.slug} has no current revision.`);
  const content = servedContent(contentOf(revision.content), revision.id, row.hiddenTexts);
  const photograph = revision.photographs[0]?.photograph;
  return {
    slug: row.slug,
    title: content.title,
    kind: revision.kind as Kind,
    state: row.state as EntryState,
    technique: revision.technique as Technique | null,
    material: revision.material,
    period: interval(content.period),
    maker: revision.maker && {
      slug: revision.maker.slug,
      name: revision.maker.name,
      place: revision.maker.place,
    },
    photograph: photograph ? toPhotograph(photograph) : null,
    photographCount: revision._count.photographs,
  };
}

export function toPhotograph(row: PhotographRow): Photograph {
  return {
    id: row.id,
    sha256: row.sha256,
    width: row.width,
    height: row.height,
    region: {
      x: row.regionX,
      y: row.regionY,
      width: row.regionWidth,
      height: row.regionHeight,
      turn: row.regionTurn,
    },
    pixelsPerMm: row.pixelsPerMm,
    shows: row.shows,
    licence: row.licence,
    credit: row.credit,
    impression: row.impression,
  };
}

export function toMakerSummary(row: MakerRow, entryCount: number): MakerSummary {
  return {
    slug: row.slug,
    name: row.name,
    kind: row.kind as MakerKind,
    place: row.place,
    trades: row.trades,
    active: interval(row.active),
    entryCount,
  };
}
