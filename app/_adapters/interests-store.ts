import type { Interests } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { isUuid } from "./is-uuid.ts";

/** Declared interests; none is ever deleted. */
export function createInterests({ prisma }: Database): Interests {
  return {
    declare: (memberId, { in: of, stake, note }, at) =>
      prisma.$transaction(async (tx) => {
        // Who declares the same twice at once waits for the first, and finds it.
        await tx.$queryRaw`SELECT id FROM members WHERE id = ${memberId}::uuid FOR UPDATE`;
        const same = { memberId, kind: of.kind, slug: of.slug, stake, endedAt: null };
        if ((await tx.interest.count({ where: same })) > 0) return;
        await tx.interest.create({ data: { ...same, note, declaredAt: at } });
      }),
    async end(memberId, id, at) {
      if (!isUuid(id)) return false;
      const { count } = await prisma.interest.updateMany({
        where: { id, memberId, endedAt: null },
        data: { endedAt: at },
      });
      return count > 0 || (await prisma.interest.count({ where: { id, memberId } })) > 0;
    },
  };
}
