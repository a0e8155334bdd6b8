import { v7 as uuidv7 } from "uuid";
import { contentOf } from "#core/entries/content-of";
import type { EntryContent } from "#core/entries/entry";
import { fingerprint } from "#core/photographs/fingerprint";
import type { Photograph } from "#core/photographs/photograph";
import type { Prisma } from "./generated/client.ts";
import { chunks } from "./revision-rows.ts";
import { toPhotograph } from "./rows.ts";
import { readTrails, type Traced } from "./write-trails.ts";

type Tx = Prisma.TransactionClient;

export type KnownRevision = {
  readonly id: string;
  readonly number: number;
  readonly contentHash: string;
  readonly content: EntryContent;
  readonly photographs: readonly Photograph[];
};

/** An entry as it stands before something is recorded; nobody else changes it meanwhile. */
export type ToRevise = {
  readonly id: string;
  readonly slug: string;
  readonly traced: Traced;
  /** Its newest revision. */
  readonly newest: KnownRevision | null;
  /** The newest that no member wrote. */
  readonly imported: KnownRevision | null;
  /** Every photograph it ever had, by what is said of it. */
  readonly photographs: ReadonlyMap<string, Photograph>;
};

const revisionInclude = {
  photographs: { include: { photograph: true }, orderBy: { position: "asc" } },
} as const satisfies Prisma.RevisionInclude;

/** Locks entries, and reads what a new revision of each is made from. */
export async function entriesToRevise(tx: Tx, slugs: readonly string[]): Promise<Map<string, ToRevise>> {
  const found = new Map<string, ToRevise>();
  for (const part of chunks([...new Set(slugs)].sort())) {
    await tx.$queryRaw`SELECT id FROM entries WHERE slug = ANY (${[...part]}::text[]) ORDER BY id FOR UPDATE`;
    const rows = await tx.entry.findMany({
      where: { slug: { in: [...part] } },
      include: {
        photographs: true,
        revisions: { orderBy: { number: "desc" }, include: revisionInclude },
      },
    });
    const traces = await readTrails(
      tx,
      rows.map(({ id }) => id),
    );
    for (const { id, slug, photographs, revisions } of rows) {
      const [newest] = revisions;
      const imported = revisions.find(({ authorId }) => authorId === null);
      found.set(slug, {
        id,
        slug,
        traced: traces.get(id) ?? untraced(id),
        newest: newest ? toKnown(newest) : null,
        imported: imported ? toKnown(imported) : null,
        photographs: new Map(
          photographs.map((row) => {
            const photograph = toPhotograph(row);
            return [fingerprint({ ...photograph, entry: slug }), photograph];
          }),
        ),
      });
    }
  }
  return found;
}

/** Makes entries that have nothing yet. */
export async function createEntries(tx: Tx, slugs: readonly string[]): Promise<readonly ToRevise[]> {
  const made = slugs.map((slug): ToRevise => {
    const id = uuidv7();
    return { id, slug, traced: untraced(id), newest: null, imported: null, photographs: new Map() };
  });
  for (const part of chunks(made))
    await tx.entry.createMany({ data: part.map(({ id, slug }) => ({ id, slug, state: "draft" })) });
  return made;
}

const untraced = (id: string): Traced => ({ id, events: [], last: null });

function toKnown(row: Prisma.RevisionGetPayload<{ include: typeof revisionInclude }>): KnownRevision {
  const { id, number, contentHash, content, photographs } = row;
  return {
    id,
    number,
    contentHash,
    content: contentOf(content),
    photographs: photographs.map(({ photograph }) => toPhotograph(photograph)),
  };
}

/** Ids of makers by their slugs. */
export async function idsOfMakers(tx: Tx, slugs: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await tx.maker.findMany({
    where: { slug: { in: [...new Set(slugs)] } },
    select: { id: true, slug: true },
  });
  return new Map(rows.map((row) => [row.slug, row.id]));
}
