import type { Sessions } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { memberInclude, toAccount } from "./members-store.ts";

/** Where members are signed in. */
export function createSessions({ prisma }: Database): Sessions {
  return {
    async open({ id, member, at, expiresAt, userAgent }) {
      await prisma.session.create({
        data: { id, memberId: member, createdAt: at, lastSeenAt: at, expiresAt, userAgent },
      });
    },
    async find(id, now) {
      const row = await prisma.session.findFirst({
        where: { id, revokedAt: null, expiresAt: { gt: now } },
        include: { member: { include: memberInclude } },
      });
      return row && { account: toAccount(row.member), lastSeenAt: row.lastSeenAt };
    },
    async seen(id, now) {
      await prisma.session.updateMany({ where: { id }, data: { lastSeenAt: now } });
    },
    async revoke(memberId, id, now) {
      await prisma.session.updateMany({ where: { id, memberId, revokedAt: null }, data: { revokedAt: now } });
    },
    async revokeAll(memberId, now, except) {
      await prisma.session.updateMany({
        where: { memberId, revokedAt: null, ...(except === undefined ? {} : { id: { not: except } }) },
        data: { revokedAt: now },
      });
    },
    async list(memberId, now) {
      const rows = await prisma.session.findMany({
        where: { memberId, revokedAt: null, expiresAt: { gt: now } },
        orderBy: [{ lastSeenAt: "desc" }, { id: "asc" }],
        take: 100,
      });
      return rows.map(({ id, createdAt, lastSeenAt, userAgent }) => ({
        id,
        createdAt: createdAt.toISOString(),
        lastSeenAt: lastSeenAt.toISOString(),
        userAgent,
      }));
    },
    async forget(now) {
      const over = [{ expiresAt: { lte: now } }, { revokedAt: { not: null } }];
      return (await prisma.session.deleteMany({ where: { OR: over } })).count;
    },
  };
}
