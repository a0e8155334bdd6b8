import { HIDDEN, hiddenFields } from "#core/entries/hidden-texts";
import type { EntryState, Field } from "#core/entries/vocabulary";
import { historyOf } from "#core/review/evolve";
import { type EntryLink, MODERATION } from "#core/review/review-lists";
import type { ReviewLists } from "../_usecases/ports/review.ts";
import type { Database } from "./database.ts";
import type { Prisma } from "./generated/client.ts";
import { toPhotograph } from "./rows.ts";
import { toLink } from "./trail-links.ts";
import { readTrails } from "./write-trails.ts";

const PREFIX = "entry:";

/** Lists over all trails: what waits for votes, what members and moderators did. */
export function createReviewLists({ prisma }: Database): ReviewLists {
  return {
    async due(now, limit) {
      const rows = await prisma.entry.findMany({
        where: { reviewClosesAt: { lte: now } },
        orderBy: [{ reviewClosesAt: "asc" }, { id: "asc" }],
        select: { slug: true },
        take: limit,
      });
      return rows.map(({ slug }) => slug);
    },
    async waiting({ fields, member, after, limit }) {
      const rows = await prisma.entry.findMany({
        where: {
          reviewRevisionId: { not: null },
          ...(fields === null ? {} : { field: { in: [...fields] } }),
        },
        orderBy: [{ reviewSubmittedAt: "asc" }, { id: "asc" }],
        skip: after,
        take: limit,
      });
      const revisions = await prisma.revision.findMany({
        where: { id: { in: rows.flatMap(({ reviewRevisionId }) => reviewRevisionId ?? []) } },
        include: {
          photographs: {
            where: { photograph: { hidden: false } },
            include: { photograph: true },
            orderBy: { position: "asc" },
            take: 1,
          },
        },
      });
      return rows.flatMap((row) => {
        const revision = revisions.find(({ id }) => id === row.reviewRevisionId);
        if (!revision || !row.reviewSubmittedAt) return [];
        const [first] = revision.photographs;
        const hidden = hiddenFields(revision.id, row.hiddenTexts);
        return [
          {
            slug: row.slug,
            state: row.state as EntryState,
            field: revision.field as Field | null,
            revision: revision.id,
            number: revision.number,
            title: hidden.includes("title") ? HIDDEN : revision.title,
            submittedAt: row.reviewSubmittedAt.toISOString(),
            createdBy: revision.createdBy,
            authorId: revision.authorId,
            voters: row.reviewVoters.length,
            voted: member !== null && row.reviewVoters.includes(member),
            photograph: first ? toPhotograph(first.photograph) : null,
          },
        ];
      });
    },
    async ofMember(member, types, after, limit) {
      const rows = await prisma.trailLink.findMany({
        where: { byId: member, type: { in: [...types] } },
        orderBy: [{ at: "desc" }, { trail: "asc" }, { number: "desc" }],
        skip: after,
        take: limit,
      });
      return withEntries(rows);
    },
    async challenged(limit) {
      const rows = await prisma.entry.findMany({
        where: { challenged: true },
        orderBy: { slug: "asc" },
        take: limit,
        select: { slug: true },
      });
      return rows.map(({ slug }) => slug);
    },
    async moderation(after, limit) {
      const rows = await prisma.trailLink.findMany({
        where: { type: { in: [...MODERATION] } },
        orderBy: [{ at: "desc" }, { trail: "asc" }, { number: "desc" }],
        skip: after,
        take: limit,
      });
      return withEntries(rows);
    },
    async votedOn(limit) {
      const rows = await prisma.$queryRaw<{ trail: string; links: number }[]>`
        SELECT trail, max(number)::int AS links FROM trail_links
        WHERE trail IN (
          SELECT trail FROM trail_links WHERE type = 'vote cast' GROUP BY trail ORDER BY max(at) DESC, trail LIMIT ${limit}
        ) GROUP BY trail ORDER BY trail`;
      return rows.map(({ trail, links }) => ({ id: trail.slice(PREFIX.length), links }));
    },
    async histories(ids) {
      const traced = [...(await readTrails(prisma, ids)).values()];
      return new Map(traced.map(({ id, events }) => [id, historyOf(events)]));
    },
  };

  async function withEntries(
    rows: readonly Prisma.TrailLinkGetPayload<object>[],
  ): Promise<readonly EntryLink[]> {
    const ids = rows.flatMap(({ trail }) => (trail.startsWith(PREFIX) ? [trail.slice(PREFIX.length)] : []));
    const entries = await prisma.entry.findMany({
      where: { id: { in: ids } },
      include: { currentRevision: { select: { id: true, title: true } } },
    });
    const known = new Map(
      entries.map(({ id, slug, state, hiddenTexts, currentRevision: shown }) => {
        const hidden = shown && hiddenFields(shown.id, hiddenTexts).includes("title");
        const title = hidden ? HIDDEN : (shown?.title ?? slug);
        return [PREFIX + id, { slug, title, state: state as EntryState }];
      }),
    );
    return rows.map((row) => ({ link: toLink(row), entry: known.get(row.trail) ?? null }));
  }
}
