import canonicalize from "canonicalize";
import { v7 as uuidv7 } from "uuid";
import { contentOf, statedContent } from "#core/entries/content-of";
import type { EntryContent } from "#core/entries/entry";
import { joinInitials } from "#core/entries/initials";
import { fingerprint } from "#core/photographs/fingerprint";
import type { Photograph } from "#core/photographs/photograph";
import { plainLetters } from "#core/reading/plain-letters";
import type { PhotographToRecord, References } from "../_usecases/ports.ts";
import { sha256OfText } from "./chance.ts";
import type { Prisma } from "./generated/client.ts";
import { write, writeDetails } from "./nearest.ts";
import { chunks, type RevisionRows, writeRevisionRows } from "./revision-rows.ts";
import { interval, toPhotograph } from "./rows.ts";

type Tx = Prisma.TransactionClient;
type Batch = Parameters<References["record"]>[0];

/** An entry as it stands before something is recorded. */
export type Current = {
  readonly id: string;
  readonly revision: { id: string; number: number; contentHash: string; content: EntryContent } | null;
  readonly photographs: readonly Photograph[];
};

export async function currentRevisions(tx: Tx, slugs: readonly string[]): Promise<Map<string, Current>> {
  const rows = await tx.entry.findMany({
    where: { slug: { in: [...new Set(slugs)] } },
    include: {
      currentRevision: {
        include: { photographs: { include: { photograph: true }, orderBy: { position: "asc" } } },
      },
    },
  });
  return new Map(
    rows.map(({ slug, id, currentRevision: r }) => [
      slug,
      {
        id,
        revision: r && { ...r, content: contentOf(r.content) },
        photographs: r?.photographs.map((p) => toPhotograph(p.photograph)) ?? [],
      },
    ]),
  );
}

export async function createEntries(tx: Tx, batch: Batch, before: Map<string, Current>): Promise<number> {
  const missing = batch.entries.filter((e) => !before.has(e.slug));
  for (const part of chunks(missing)) {
    const rows = part.map((e) => ({ id: uuidv7(), slug: e.slug, state: "under review" }));
    await tx.entry.createMany({ data: rows });
    for (const row of rows) before.set(row.slug, { id: row.id, revision: null, photographs: [] });
  }
  return missing.length;
}

export async function recordRevisions(
  tx: Tx,
  batch: Batch,
  before: Map<string, Current>,
): Promise<{ revisions: number; photographs: number }> {
  const contents = new Map(batch.entries.map((e) => [e.slug, e.content]));
  const arriving = byEntry(batch.photographs);
  const makerIds = await idsOfMakers(
    tx,
    [...contents.values()].flatMap((c) => c.maker ?? []),
  );
  const rows = emptyRows();
  for (const slug of new Set([...contents.keys(), ...arriving.keys()])) {
    const current = before.get(slug);
    const content = contents.get(slug) ?? current?.revision?.content;
    if (!current || !content) throw new Error(`Entry ${slug} has no content to revise.`);
    const shown = mergePhotographs(slug, current.photographs, arriving.get(slug) ?? []);
    const contentHash = hashOf(slug, content, shown);
    if (contentHash === current.revision?.contentHash) continue;
    addRevision(rows, batch, {
      slug,
      current,
      content,
      shown,
      contentHash,
      makerId: makerIds.get(content.maker ?? ""),
    });
  }
  await writeRevisionRows(tx, rows);
  return { revisions: rows.revisions.length, photographs: rows.photographs.length };
}

function byEntry(
  photographs: readonly PhotographToRecord[],
): ReadonlyMap<string, readonly PhotographToRecord[]> {
  const groups = new Map<string, PhotographToRecord[]>();
  for (const p of photographs) {
    const group = groups.get(p.entry);
    if (group) group.push(p);
    else groups.set(p.entry, [p]);
  }
  return groups;
}

type Shown = {
  readonly id: string;
  readonly photograph: Photograph;
  readonly fresh: PhotographToRecord | null;
};

/** The photographs an entry shows from now on: those it has, each replaced by a newer statement about the same image. */
function mergePhotographs(
  slug: string,
  has: readonly Photograph[],
  arriving: readonly PhotographToRecord[],
): Shown[] {
  const shown = has.map((photograph): Shown => ({ id: photograph.id, photograph, fresh: null }));
  for (const fresh of arriving) {
    const place = shown.findIndex((s) => s.photograph.sha256 === fresh.sha256);
    const known = shown[place];
    const same =
      known &&
      fingerprint({ ...known.photograph, entry: slug }) === fingerprint(fresh) &&
      fresh.vectors === null;
    if (same) continue;
    const id = uuidv7();
    const next = { id, photograph: { ...fresh, id }, fresh };
    if (place < 0) shown.push(next);
    else shown[place] = next;
  }
  return shown;
}

/** SHA-256 over the canonical JSON (RFC 8785) of what a revision says, photographs included. */
function hashOf(slug: string, content: EntryContent, shown: readonly Shown[]): string {
  const photographs = shown.map((s) => fingerprint({ ...s.photograph, entry: slug }));
  return sha256OfText(canonicalize({ content: statedContent(content), photographs }) ?? "");
}

const emptyRows = (): RevisionRows => ({
  revisions: [],
  parents: [],
  photographs: [],
  vectors: [],
  shown: [],
  current: [],
  words: [],
});

function addRevision(
  rows: RevisionRows,
  batch: Batch,
  given: {
    slug: string;
    current: Current;
    content: EntryContent;
    shown: readonly Shown[];
    contentHash: string;
    makerId: string | undefined;
  },
): void {
  const { current, content, shown } = given;
  const id = uuidv7();
  const period = interval(content.period);
  rows.revisions.push({
    id,
    entryId: current.id,
    number: (current.revision?.number ?? 0) + 1,
    contentHash: given.contentHash,
    content: statedContent(content) as Prisma.InputJsonValue,
    title: content.title,
    kind: content.kind,
    field: content.field,
    technique: content.technique,
    material: content.material,
    makerId: given.makerId ?? null,
    earliest: period?.earliest ?? null,
    latest: period?.latest ?? null,
    createdBy: batch.by,
  });
  if (current.revision) rows.parents.push({ revisionId: id, parentId: current.revision.id });
  for (const [position, { id: photographId, fresh }] of shown.entries()) {
    rows.shown.push({ revisionId: id, photographId, position });
    if (!fresh) continue;
    const { region, vectors, entry: _entry, ...facts } = fresh;
    rows.photographs.push({
      ...facts,
      id: photographId,
      entryId: current.id,
      regionX: region.x,
      regionY: region.y,
      regionWidth: region.width,
      regionHeight: region.height,
      regionTurn: region.turn,
    });
    for (const [model, described] of vectors ?? [])
      rows.vectors.push({
        id: photographId,
        model,
        vector: write(described),
        details: writeDetails(described),
      });
  }
  rows.current.push({ entry: current.id, revision: id });
  rows.words.push({
    entry: current.id,
    title: content.title,
    maker: given.makerId ?? null,
    ...wordsOf(content),
  });
}

function wordsOf(c: EntryContent): { names: string; body: string; letters: string } {
  return {
    letters: plainLetters(c.words, { wildcards: false }),
    names: [c.words, ...joinInitials(c.words), c.emblem].join(" "),
    body: [
      c.description,
      c.frame,
      c.technique,
      c.material,
      c.placeOnObject,
      c.distinguish,
      c.reproductions,
      ...c.colours,
      c.kind,
    ].join(" "),
  };
}

async function idsOfMakers(tx: Tx, slugs: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const rows = await tx.maker.findMany({
    where: { slug: { in: [...new Set(slugs)] } },
    select: { id: true, slug: true },
  });
  return new Map(rows.map((r) => [r.slug, r.id]));
}
