import type { Database } from "./database.ts";

/** Is the image shown by anything whose images whoever knows their address may see: all but object files? */
export async function isShownOpenly(prisma: Database["prisma"], sha256: string): Promise<boolean> {
  const found = await Promise.all([
    prisma.lookUpPhotograph.findFirst({ where: { sha256 }, select: { lookUpId: true } }),
    prisma.photograph.findFirst({ where: { sha256 }, select: { id: true } }),
    prisma.questionPhotograph.findFirst({ where: { sha256 }, select: { position: true } }),
    prisma.evidencePhotograph.findFirst({ where: { sha256 }, select: { position: true } }),
    prisma.draft.findFirst({
      where: { photographs: { array_contains: [{ sha256 }] } },
      select: { id: true },
    }),
  ]);
  return found.some((row) => row !== null);
}
