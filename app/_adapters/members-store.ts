import type { Field } from "#core/entries/vocabulary";
import type { Account, KeptInterest, Member, Standing } from "#core/members/account";
import type { Stake } from "#core/members/member";
import type { Members } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { Prisma } from "./generated/client.ts";
import { isUuid } from "./is-uuid.ts";
import { appendLinks } from "./trail-links.ts";
import { again } from "./trails-store.ts";

type Tx = Prisma.TransactionClient;

export const memberInclude = {
  interests: { orderBy: [{ declaredAt: "asc" }, { id: "asc" }] },
} as const satisfies Prisma.MemberInclude;
type Row = Prisma.MemberGetPayload<{ include: typeof memberInclude }>;

const TRAIL = "members";

/** Members and what they may do. */
export function createMembers({ prisma }: Database): Members {
  return {
    async create({ at, id, ...member }) {
      try {
        const data = { ...member, ...(id === undefined ? {} : { id }), createdAt: at };
        return (await prisma.member.create({ data, select: { id: true } })).id;
      } catch (error) {
        if (isTaken(error)) return null;
        throw error;
      }
    },
    async find(id) {
      // Anything else is no id, and is not asked for.
      if (!isUuid(id)) return null;
      const row = await prisma.member.findUnique({ where: { id }, include: memberInclude });
      return row && toAccount(row);
    },
    byEmail: (email) =>
      prisma.member.findUnique({ where: { email }, select: { id: true, passwordHash: true } }),
    async byIdentity({ provider, subject }) {
      const where = { provider_subject: { provider, subject } };
      return (await prisma.identity.findUnique({ where }))?.memberId ?? null;
    },
    async addIdentity(memberId, identity) {
      await prisma.identity.createMany({ data: [{ ...identity, memberId }], skipDuplicates: true });
    },
    async update(id, changes) {
      await prisma.member.update({ where: { id }, data: changes });
    },
    act: (id, decide) =>
      again(() =>
        prisma.$transaction(async (tx) => {
          const member = await locked(tx, id);
          if (!member) return null;
          const decided = decide(member);
          if (!decided.ok) return decided;
          const { events, after } = decided.value;
          if (events.length > 0) {
            await tx.member.update({ where: { id }, data: standingRow(after) });
            await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtext(${TRAIL}))`;
            const last = await tx.trailLink.findFirst({
              where: { trail: TRAIL },
              orderBy: { number: "desc" },
            });
            await appendLinks(tx, [{ trail: TRAIL, last, events }]);
          }
          return { ok: true, value: events } as const;
        }),
      ),
    async search(words, after, limit) {
      const rows = await prisma.member.findMany({
        // A sign that stands for others in a pattern stands for itself here.
        where: { name: { contains: words.replace(/[\\%_]/g, "\\$&"), mode: "insensitive" } },
        orderBy: [{ name: "asc" }, { id: "asc" }],
        include: memberInclude,
        skip: after,
        take: limit,
      });
      return rows.map(toMember);
    },
  };
}

const isTaken = (error: unknown): boolean =>
  error instanceof Prisma.PrismaClientKnownRequestError && error.code === "P2002";

async function locked(tx: Tx, id: string): Promise<Member | null> {
  if (!isUuid(id)) return null;
  await tx.$queryRaw`SELECT id FROM members WHERE id = ${id}::uuid FOR UPDATE`;
  const row = await tx.member.findUnique({ where: { id }, include: memberInclude });
  return row && toMember(row);
}

function standingRow({ isModerator, isAdministrator, fields, suspendedAt }: Standing) {
  const suspended = suspendedAt === null ? null : new Date(suspendedAt);
  return { isModerator, isAdministrator, fields: [...fields], suspendedAt: suspended };
}

function toMember(row: Row): Member {
  return {
    id: row.id,
    name: row.name,
    about: row.about,
    createdAt: row.createdAt.toISOString(),
    isModerator: row.isModerator,
    isAdministrator: row.isAdministrator,
    fields: row.fields as Field[],
    suspendedAt: row.suspendedAt?.toISOString() ?? null,
    interests: row.interests.map(toInterest),
  };
}

/** The member, with what concerns them alone. */
export const toAccount = (row: Row): Account => ({
  ...toMember(row),
  email: row.email,
  hasPassword: row.passwordHash !== null,
});

const toInterest = ({ id, kind, slug, stake, note, ...at }: Row["interests"][number]): KeptInterest => ({
  id,
  in: { kind: kind as "maker" | "entry", slug },
  stake: stake as Stake,
  note,
  declaredAt: at.declaredAt.toISOString(),
  endedAt: at.endedAt?.toISOString() ?? null,
});
