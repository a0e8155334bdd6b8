import type { SignInAttempts } from "../_usecases/ports.ts";
import { sha256OfText } from "./chance.ts";
import type { Database } from "./database.ts";

/** Attempts counted at most; there are more only where thousands try at once. */
const MOST = 200;

/** Attempts to sign in: who tried, and for whom, as hashes. */
export function createSignInAttempts({ prisma }: Database): SignInAttempts {
  return {
    async begin({ email, client, at }, since) {
      const [byEmail, byClient] = [sha256OfText(`email ${email}`), sha256OfText(`client ${client}`)];
      await prisma.signInAttempt.deleteMany({ where: { at: { lt: since } } });
      const { id } = await prisma.signInAttempt.create({ data: { byEmail, byClient, at } });
      const moments = async (where: { byEmail: string } | { byClient: string }) => {
        const rows = await prisma.signInAttempt.findMany({
          where: { ...where, at: { gte: since } },
          orderBy: { at: "desc" },
          select: { at: true },
          take: MOST,
        });
        return rows.map((row) => row.at.getTime());
      };
      return { id, byEmail: await moments({ byEmail }), byClient: await moments({ byClient }) };
    },
    async forget(id) {
      await prisma.signInAttempt.deleteMany({ where: { id } });
    },
  };
}
