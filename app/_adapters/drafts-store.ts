import { type Draft, type DraftPhotograph, MOST_DRAFT_PHOTOGRAPHS } from "#core/drafts/draft";
import type { Typed } from "#core/questions/typed-text";
import type { Drafts } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import type { Prisma } from "./generated/client.ts";
import { isUuid } from "./is-uuid.ts";

/** What ids of drafts can look like; anything else is none, and is not asked for. */
const isToken = (id: string): boolean => /^[\w-]{1,64}$/.test(id);

/** What members are writing. Every question names the owner: nobody else's draft is ever found. */
export function createDrafts({ prisma }: Database): Drafts {
  const own = (id: string, ownerId: string) => ({ id, ownerId, submittedSlug: null });
  return {
    async create({ id, owner, entry, parents, basedOn, typed, photographs }) {
      const data = { id, ownerId: owner, entrySlug: entry, parents: [...parents], basedOn };
      await prisma.draft.create({
        data: { ...data, typed: asJson(typed), photographs: asJson(photographs) },
      });
    },
    async find(id, owner) {
      if (!isToken(id) || !isUuid(owner)) return null;
      const row = await prisma.draft.findUnique({ where: { id, ownerId: owner } });
      return row && toDraft(row);
    },
    async list(owner, limit) {
      if (!isUuid(owner)) return [];
      const rows = await prisma.draft.findMany({
        where: { ownerId: owner },
        orderBy: [{ updatedAt: "desc" }, { id: "asc" }],
        take: limit,
      });
      return rows.map(toDraft);
    },
    async save(id, owner, had, { typed, parents, basedOn, photographs }) {
      const { count } = await prisma.draft.updateMany({
        where: { ...own(id, owner), version: had },
        data: {
          typed: asJson(typed),
          ...(basedOn ? { basedOn } : {}),
          ...(parents ? { parents: [...parents] } : {}),
          ...(photographs ? { photographs: asJson(photographs) } : {}),
          version: had + 1,
          updatedAt: new Date(),
        },
      });
      if (count === 0) return null;
      const row = await prisma.draft.findUnique({ where: { id, ownerId: owner } });
      return row && toDraft(row);
    },
    async addPhotograph(id, owner, photograph) {
      const named = JSON.stringify([{ sha256: photograph.sha256 }]);
      // In one statement, so that photographs that come at the same time are all kept.
      const added = await prisma.$executeRaw`
        UPDATE drafts SET photographs = photographs || ${JSON.stringify([photograph])}::jsonb, updated_at = now()
        WHERE id = ${id} AND owner_id = ${owner}::uuid AND submitted_slug IS NULL
          AND jsonb_array_length(photographs) < ${MOST_DRAFT_PHOTOGRAPHS}::int
          AND NOT photographs @> ${named}::jsonb`;
      return added === 1;
    },
    async removePhotograph(id, owner, sha256) {
      await prisma.$executeRaw`
        UPDATE drafts SET updated_at = now(), photographs = COALESCE((
          SELECT jsonb_agg(each.value ORDER BY each.place)
          FROM jsonb_array_elements(photographs) WITH ORDINALITY AS each (value, place)
          WHERE each.value ->> 'sha256' <> ${sha256}), '[]'::jsonb)
        WHERE id = ${id} AND owner_id = ${owner}::uuid AND submitted_slug IS NULL`;
    },
    async movePhotograph(id, owner, sha256, towards) {
      const by = towards === "first" ? -1.5 : 1.5;
      await prisma.$executeRaw`
        UPDATE drafts SET updated_at = now(), photographs = COALESCE((
          SELECT jsonb_agg(each.value ORDER BY each.place +
            CASE WHEN each.value ->> 'sha256' = ${sha256} THEN ${by}::float8 ELSE 0 END)
          FROM jsonb_array_elements(photographs) WITH ORDINALITY AS each (value, place)), '[]'::jsonb)
        WHERE id = ${id} AND owner_id = ${owner}::uuid AND submitted_slug IS NULL`;
    },
    async end(id, owner, submitted) {
      if (submitted === null) await prisma.draft.deleteMany({ where: own(id, owner) });
      else
        await prisma.draft.updateMany({
          where: own(id, owner),
          data: { submittedSlug: submitted.slug, submittedNumber: submitted.number, updatedAt: new Date() },
        });
    },
  };
}

const asJson = (value: unknown): Prisma.InputJsonValue => value as Prisma.InputJsonValue;

function toDraft(row: Prisma.DraftGetPayload<object>): Draft {
  const { submittedSlug: slug, submittedNumber: number } = row;
  return {
    id: row.id,
    owner: row.ownerId,
    entry: row.entrySlug,
    parents: row.parents,
    basedOn: row.basedOn,
    typed: row.typed as Typed,
    photographs: row.photographs as unknown as readonly DraftPhotograph[],
    version: row.version,
    updatedAt: row.updatedAt,
    submitted: slug !== null && number !== null ? { slug, number } : null,
  };
}
