import type { Kind, Technique } from "#core/entries/vocabulary";
import type { AskedPhotograph, FramedBy } from "#core/look-ups/asked-photographs";
import type { KeptLookUp } from "#core/look-ups/kept-look-up";
import type { LookUps } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import type { Prisma } from "./generated/client.ts";
import { isShownOpenly } from "./image-shown-openly.ts";

/** What an id can look like; anything else is not asked for. */
const isToken = (id: string): boolean => /^[\w-]{1,64}$/.test(id);

/** Answers that were kept before there were probabilities have none. */
const withProbability = (match: KeptLookUp["matches"][number]): KeptLookUp["matches"][number] => ({
  ...match,
  probability: match.probability ?? null,
});

/** Look-ups with their kept answers. */
export function createLookUps({ prisma }: Database): LookUps {
  return {
    async save(lookUp) {
      const { photographs, asked, matches, otherMarks, makers, timings, ...rest } = lookUp;
      await prisma.lookUp.create({
        data: {
          ...rest,
          photographs: { create: photographs.map(toRow) },
          askedLetters: asked.letters,
          askedWidthMm: asked.widthMm,
          askedHeightMm: asked.heightMm,
          askedTechnique: asked.technique,
          askedMaterial: asked.material,
          askedKind: asked.kind,
          matches: asJson(matches),
          otherMarks: asJson(otherMarks),
          makers: asJson(makers),
          timings,
        },
      });
    },
    async find(id) {
      const row = isToken(id)
        ? await prisma.lookUp.findUnique({
            where: { id },
            include: { photographs: { orderBy: { position: "asc" } } },
          })
        : null;
      if (!row) return null;
      const { photographs, matches, otherMarks, makers, timings, ...parts } = row;
      const { askedLetters, askedWidthMm, askedHeightMm, askedTechnique, askedMaterial, askedKind, ...rest } =
        parts;
      return {
        ...rest,
        photographs: photographs.map(toPhotograph),
        asked: {
          letters: askedLetters,
          widthMm: askedWidthMm,
          heightMm: askedHeightMm,
          technique: askedTechnique as Technique | null,
          material: askedMaterial,
          kind: askedKind as Kind | null,
        },
        matches: (matches as unknown as KeptLookUp["matches"]).map(withProbability),
        otherMarks: (otherMarks as unknown as KeptLookUp["otherMarks"]).map((each) => ({
          ...each,
          noneProbability: each.noneProbability ?? null,
          matches: each.matches.map(withProbability),
        })),
        makers: (makers as unknown as KeptLookUp["makers"]).map((each) => ({
          ...each,
          answers: each.answers.map((answer) => ({ ...answer, match: withProbability(answer.match) })),
        })),
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
      const kept = prisma.objectFileImage.findFirst({ where: { sha256 }, select: { fileId: true } });
      return (await kept) !== null || isShownOpenly(prisma, sha256);
    },
    async imageOwnedBy(sha256, ownerHash) {
      const own = { sha256, lookUp: { ownerHash } };
      return (await prisma.lookUpPhotograph.findFirst({ where: own, select: { lookUpId: true } })) !== null;
    },
  };
}

const asJson = (value: unknown): Prisma.InputJsonValue => value as Prisma.InputJsonValue;

const toRow = ({ region, ...rest }: AskedPhotograph, index: number) => ({
  ...rest,
  position: index + 1,
  regionX: region.x,
  regionY: region.y,
  regionWidth: region.width,
  regionHeight: region.height,
  regionTurn: region.turn,
});

function toPhotograph(row: Prisma.LookUpPhotographGetPayload<object>): AskedPhotograph {
  const { regionX: x, regionY: y, regionWidth, regionHeight, regionTurn: turn } = row;
  const region = { x, y, width: regionWidth, height: regionHeight, turn };
  const { sha256, width, height, mark } = row;
  return { sha256, width, height, region, framedBy: row.framedBy as FramedBy, mark };
}
