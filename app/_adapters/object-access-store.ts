import type { AccessEvent } from "#core/object-files/kept-file";
import type { ObjectAccess } from "../_usecases/ports/object-files.ts";
import type { Database } from "./database.ts";
import type { Prisma } from "./generated/client.ts";

type Tx = Prisma.TransactionClient;

/** Who is let into object files: what happened is appended, and what is so now follows it in the same step. */
export function createObjectAccess({ prisma }: Database): ObjectAccess {
  return {
    async record(fileId, event, shareHash) {
      await prisma.$transaction(async (tx) => {
        await tx.$queryRaw`SELECT id FROM object_files WHERE id = ${fileId} FOR UPDATE`;
        const last = await tx.objectFileAccess.findFirst({ where: { fileId }, orderBy: { number: "desc" } });
        const { type, member, at, by } = event;
        const whom = { memberId: member?.id ?? null, memberName: member?.name ?? "" };
        await tx.objectFileAccess.create({
          data: { fileId, number: (last?.number ?? 0) + 1, type, ...whom, at, byId: by.id, byName: by.name },
        });
        await follow(tx, fileId, event, shareHash);
      });
    },
    async history(fileId) {
      const rows = await prisma.objectFileAccess.findMany({ where: { fileId }, orderBy: { number: "desc" } });
      return rows.map(({ type, memberId, memberName, at, byId, byName }) => ({
        type: type as AccessEvent["type"],
        member: memberId === null ? null : { id: memberId, name: memberName },
        at,
        by: { id: byId, name: byName },
      }));
    },
  };
}

async function follow(tx: Tx, id: string, { type, member, at }: AccessEvent, shareHash: string | null) {
  const set = (data: Prisma.ObjectFileUpdateInput) => tx.objectFile.update({ where: { id }, data });
  const memberId = member?.id ?? "";
  switch (type) {
    case "invited to view":
    case "invited to edit": {
      const way = type === "invited to view" ? "view" : "edit";
      const where = { fileId_memberId: { fileId: id, memberId } };
      await tx.objectFileMember.upsert({ where, create: { fileId: id, memberId, way }, update: { way } });
      return;
    }
    case "invitation ended":
      await tx.objectFileMember.deleteMany({ where: { fileId: id, memberId } });
      return;
    case "link made":
      await set({ shareHash, sharedAt: at });
      return;
    case "link revoked":
      await set({ shareHash: null, sharedAt: null });
      return;
    case "published":
      await set({ publishedAt: at });
      return;
    case "publication ended":
      await set({ publishedAt: null });
  }
}
