import type { FileVersion, KeptFile, Way } from "#core/object-files/kept-file";
import type { ObjectFile } from "#core/object-files/object-file";
import type { ObjectFiles, WrittenVersion } from "../_usecases/ports/object-files.ts";
import { canonicalJson } from "./canonical-json.ts";
import { sha256OfText } from "./chance.ts";
import type { Database } from "./database.ts";
import { Prisma } from "./generated/client.ts";
import { isUuid } from "./is-uuid.ts";
import { toFileLine } from "./object-file-lines.ts";

const named = { select: { id: true, name: true } } as const;
const include = {
  owner: named,
  members: { include: { member: named }, orderBy: { memberId: "asc" } },
} as const satisfies Prisma.ObjectFileInclude;

/** What an id can look like; anything else is none, and is not asked for. */
const isToken = (id: string): boolean => /^[\w-]{1,64}$/.test(id);

/** Object files; a version is kept as the very text that was hashed. */
export function createObjectFiles({ prisma }: Database): ObjectFiles {
  return {
    async create(id, first) {
      const { at, by, content } = first;
      const data = { id, ownerId: by.id, ...rowOf(content), version: 1, createdAt: at, updatedAt: at };
      await prisma.objectFile.create({ data: { ...data, versions: { create: versionRow(1, first) } } });
    },
    async find(id) {
      if (!isToken(id)) return null;
      const row = await prisma.objectFile.findUnique({ where: { id }, include });
      const newest =
        row &&
        (await prisma.objectFileVersion.findUnique({
          where: { fileId_number: { fileId: id, number: row.version } },
        }));
      return row && newest ? toKept(row, newest) : null;
    },
    async idByShare(hash) {
      const row = await prisma.objectFile.findUnique({ where: { shareHash: hash }, select: { id: true } });
      return row?.id ?? null;
    },
    async list(member, limit) {
      if (!isUuid(member)) return [];
      const rows = await prisma.objectFile.findMany({
        where: { OR: [{ ownerId: member }, { members: { some: { memberId: member } } }] },
        orderBy: [{ updatedAt: "desc" }, { id: "asc" }],
        include: { ...include, images: { orderBy: [{ addedAt: "asc" }, { sha256: "asc" }], take: 1 } },
        take: limit,
      });
      return rows.map((row) => toFileLine(row, member));
    },
    async published(entry, limit) {
      const newest = await newestPublished(prisma, entry, limit);
      const rows = await prisma.objectFile.findMany({
        where: { id: { in: newest.map(({ id }) => id) } },
        include,
      });
      return newest.flatMap(({ id, content }) => {
        const row = rows.find((each) => each.id === id);
        // Of what it shows today: an image that was taken out is for those who may see its history.
        const { photographs } = JSON.parse(content) as ObjectFile;
        return row ? [toFileLine({ ...row, images: photographs }, null)] : [];
      });
    },
    async versions(id) {
      const rows = await prisma.objectFileVersion.findMany({
        where: { fileId: id },
        orderBy: { number: "desc" },
        omit: { content: true },
      });
      return rows.map(
        ({ number, hash, command, at, byId, byName }): FileVersion => ({
          number,
          hash,
          command: JSON.parse(command),
          at,
          by: { id: byId, name: byName },
        }),
      );
    },
    async contentOf(fileId, number) {
      const fits = Number.isInteger(number) && number > 0 && number < 2 ** 31;
      const where = { fileId_number: { fileId, number } };
      const row = fits && (await prisma.objectFileVersion.findUnique({ where }));
      return row ? contentIn(row.content) : null;
    },
    async append(id, had, next) {
      try {
        return await prisma.$transaction(async (tx) => {
          const { count } = await tx.objectFile.updateMany({
            where: { id, version: had },
            data: { ...rowOf(next.content), version: had + 1, updatedAt: next.at },
          });
          if (count === 0) return false;
          await tx.objectFileVersion.create({ data: { fileId: id, ...versionRow(had + 1, next) } });
          return true;
        });
      } catch (error) {
        // Two at once: the database lets one through.
        if (error instanceof Prisma.PrismaClientKnownRequestError && ["P2002", "P2034"].includes(error.code))
          return false;
        throw error;
      }
    },
  };
}

/** What published files say today, last changed first; of an entry, by the canonical text of a match with it. */
function newestPublished(prisma: Database["prisma"], entry: string | null, limit: number) {
  const matched = entry === null ? "" : `"match":{"entry":${JSON.stringify(entry)},`;
  return prisma.$queryRaw<readonly { readonly id: string; readonly content: string }[]>`
    SELECT f.id, v.content FROM object_files f
    JOIN object_file_versions v ON v.file_id = f.id AND v.number = f.version
    WHERE f.published_at IS NOT NULL AND position(${matched} IN v.content) > 0
    ORDER BY f.updated_at DESC, f.id LIMIT ${limit}`;
}

const rowOf = ({ title, family }: ObjectFile) => ({ title, family });

function versionRow(number: number, { content, command, at, by }: WrittenVersion) {
  const text = canonicalJson(content);
  const made = { content: text, hash: sha256OfText(text), command: canonicalJson(command) };
  return { number, ...made, at, byId: by.id, byName: by.name };
}

/** What a version says; one of before evidence was taken from worksheets has none of it. */
const contentIn = (text: string): ObjectFile => ({ pieces: [], ...JSON.parse(text) });

type Row = Prisma.ObjectFileGetPayload<{ include: typeof include }>;

function toKept(row: Row, newest: Prisma.ObjectFileVersionGetPayload<object>): KeptFile {
  const { id, owner, members, version, sharedAt, publishedAt, createdAt, updatedAt } = row;
  return {
    id,
    owner,
    invited: members.map(({ member, way }) => ({ ...member, way: way as Way })),
    sharedAt,
    publishedAt,
    version,
    hash: newest.hash,
    content: contentIn(newest.content),
    createdAt,
    updatedAt,
  };
}
