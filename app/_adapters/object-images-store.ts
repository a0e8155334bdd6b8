import { MOST_FILE_IMAGES } from "#core/object-files/kept-file";
import type { ObjectImages } from "../_usecases/ports/object-files.ts";
import type { Database } from "./database.ts";
import { isShownOpenly } from "./image-shown-openly.ts";

/** Images that object files show or ever showed. */
export function createObjectImages({ prisma }: Database): ObjectImages {
  return {
    async add(fileId, { sha256, width, height }, at) {
      return prisma.$transaction(async (tx) => {
        // Those who add at the same time wait for each other, so that none is counted past the limit.
        await tx.$queryRaw`SELECT id FROM object_files WHERE id = ${fileId} FOR UPDATE`;
        const where = { fileId_sha256: { fileId, sha256 } };
        if (await tx.objectFileImage.findUnique({ where })) return true;
        if ((await tx.objectFileImage.count({ where: { fileId } })) >= MOST_FILE_IMAGES) return false;
        await tx.objectFileImage.create({ data: { fileId, sha256, width, height, addedAt: at } });
        return true;
      });
    },
    async has(fileId, sha256) {
      const row = await prisma.objectFileImage.findUnique({ where: { fileId_sha256: { fileId, sha256 } } });
      return row && { sha256, width: row.width, height: row.height };
    },
    async privateTo(sha256) {
      if (await isShownOpenly(prisma, sha256)) return [];
      const rows = await prisma.objectFileImage.findMany({
        where: { sha256 },
        select: { fileId: true },
        orderBy: { fileId: "asc" },
        take: 100,
      });
      return rows.map(({ fileId }) => fileId);
    },
  };
}
