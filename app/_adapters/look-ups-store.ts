import type { Kind, Technique } from "#core/entries/vocabulary";
import type { FramedBy } from "#core/look-ups/look-up";
import type { KeptLookUp, LookUps } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import type { Prisma } from "./generated/client.ts";

/** What an id can look like; anything else is not asked for. */
const isToken = (id: string): boolean => /^[\w-]{1,64}$/.test(id);

/** Look-ups with their kept answers. */
export function createLookUps({ prisma }: Database): LookUps {
  return {
    async save(lookUp) {
      const { region, asked, matches, timings, ...rest } = lookUp;
      await prisma.lookUp.create({
        data: {
          ...rest,
          regionX: region.x,
          regionY: region.y,
          regionWidth: region.width,
          regionHeight: region.height,
          regionTurn: region.turn,
          askedLetters: asked.letters,
          askedWidthMm: asked.widthMm,
          askedHeightMm: asked.heightMm,
          askedTechnique: asked.technique,
          askedMaterial: asked.material,
          askedKind: asked.kind,
          matches: matches as unknown as Prisma.InputJsonValue,
          timings,
        },
      });
    },
    async find(id) {
      const row = isToken(id) ? await prisma.lookUp.findUnique({ where: { id } }) : null;
      if (!row) return null;
      const { regionX, regionY, regionWidth, regionHeight, regionTurn, matches, timings, ...parts } = row;
      const { askedLetters, askedWidthMm, askedHeightMm, askedTechnique, askedMaterial, askedKind, ...rest } =
        parts;
      return {
        ...rest,
        framedBy: rest.framedBy as FramedBy,
        region: { x: regionX, y: regionY, width: regionWidth, height: regionHeight, turn: regionTurn },
        asked: {
          letters: askedLetters,
          widthMm: askedWidthMm,
          heightMm: askedHeightMm,
          technique: askedTechnique as Technique | null,
          material: askedMaterial,
          kind: askedKind as Kind | null,
        },
        matches: matches as unknown as KeptLookUp["matches"],
        timings: timings as unknown as KeptLookUp["timings"],
      };
    },
    async setExpiry(id, expiresAt) {
      await prisma.lookUp.updateMany({ where: { id }, data: { expiresAt } });
    },
    async remove(id) {
      await prisma.lookUp.deleteMany({ where: { id } });
    },
    async expired(now, limit) {
      const rows = await prisma.lookUp.findMany({
        where: { expiresAt: { lte: now } },
        orderBy: [{ expiresAt: "asc" }, { id: "asc" }],
        select: { id: true },
        take: limit,
      });
      return rows.map((row) => row.id);
    },
    async imageInUse(sha256) {
      const [lookUp, photograph] = await Promise.all([
        prisma.lookUp.findFirst({ where: { sha256 }, select: { id: true } }),
        prisma.photograph.findFirst({ where: { sha256 }, select: { id: true } }),
      ]);
      return lookUp !== null || photograph !== null;
    },
    async imageOwnedBy(sha256, ownerHash) {
      return (await prisma.lookUp.findFirst({ where: { sha256, ownerHash }, select: { id: true } })) !== null;
    },
  };
}
