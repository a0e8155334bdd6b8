import { HIDDEN, hiddenFields } from "#core/entries/hidden-texts";
import type { EntryState, Field } from "#core/entries/vocabulary";
import { type EntryLink, MODERATION, type Rating } from "#core/review/review-lists";
import type { ReviewLists } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { Prisma } from "./generated/client.ts";
import { toPhotograph } from "./rows.ts";
import { toLink } from "./trail-links.ts";

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
    async moderation(after, limit) {
      const rows = await prisma.trailLink.findMany({
        where: { type: { in: [...MODERATION] } },
        orderBy: [{ at: "desc" }, { trail: "asc" }, { number: "desc" }],
        skip: after,
        take: limit,
      });
      return withEntries(rows);
    },
    ratings(field) {
      // The latest of each voter stands; numbers run with time within a trail.
      return prisma.$queryRaw<Rating[]>`
        SELECT DISTINCT ON (said.revision, said.voter) said.revision, said.voter, said.choice
        FROM (SELECT payload::jsonb ->> 'revision' AS revision, by_id::text AS voter,
            payload::jsonb ->> 'choice' AS choice, number
          FROM trail_links WHERE type = 'vote cast') AS said
        JOIN revisions ON revisions.id::text = said.revision
        WHERE ${field === null ? Prisma.sql`TRUE` : Prisma.sql`revisions.field = ${field}`}
        ORDER BY said.revision, said.voter, said.number DESC`;
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
