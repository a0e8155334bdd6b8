import { v7 as uuidv7 } from "uuid";
import { statedContent } from "#core/entries/content-of";
import type { EntryContent } from "#core/entries/entry";
import { whatItHas } from "#core/entries/what-it-has";
import { fingerprint } from "#core/photographs/fingerprint";
import type { Photograph } from "#core/photographs/photograph";
import type { RecordedRevision } from "#core/review/entry-event";
import type { PhotographToRecord } from "../_usecases/ports.ts";
import { hashOfValue } from "./canonical-json.ts";
import type { Prisma } from "./generated/client.ts";
import { write, writeDetails } from "./nearest.ts";
import type { RevisionRows } from "./revision-rows.ts";
import { interval } from "./rows.ts";

/** A photograph as a new revision shows it; `fresh` when it is not in the tables yet. */
export type Shown = {
  readonly id: string;
  readonly photograph: Photograph;
  readonly fresh: PhotographToRecord | null;
};

export type NewRevision = {
  readonly entry: { readonly id: string; readonly slug: string };
  readonly number: number;
  readonly content: EntryContent;
  readonly shown: readonly Shown[];
  readonly parents: readonly string[];
  readonly makerId: string | null;
  /** Members; none for an import. The first is who submits it. */
  readonly authors: readonly string[];
  readonly createdBy: string;
  readonly summary: string;
  readonly at: string;
};

/** SHA-256 over the canonical JSON (RFC 8785) of what a revision says, photographs included. */
export function contentHash(slug: string, stated: unknown, photographs: readonly Photograph[]): string {
  return hashOfValue({
    content: stated,
    photographs: photographs.map((photograph) => fingerprint({ ...photograph, entry: slug })),
  });
}

/**
 * Adds a revision to the rows to be written.
 * @returns what its trail records of it
 */
export function addRevision(rows: RevisionRows, revision: NewRevision): RecordedRevision {
  const { entry, number, content, shown, parents, authors } = revision;
  const id = uuidv7();
  const stated = statedContent(content);
  const photographs = shown.map(({ photograph }) => photograph);
  const hash = contentHash(entry.slug, stated, photographs);
  const period = interval(content.period);
  rows.revisions.push({
    id,
    entryId: entry.id,
    number,
    contentHash: hash,
    content: stated as Prisma.InputJsonValue,
    title: content.title,
    kind: content.kind,
    field: content.field,
    technique: content.technique,
    material: content.material,
    makerId: revision.makerId,
    earliest: period?.earliest ?? null,
    latest: period?.latest ?? null,
    createdAt: new Date(revision.at),
    createdBy: revision.createdBy,
    authorId: authors[0] ?? null,
    summary: revision.summary,
  });
  for (const parentId of parents) rows.parents.push({ revisionId: id, parentId });
  for (const [position, { id: photographId, fresh }] of shown.entries()) {
    rows.shown.push({ revisionId: id, photographId, position });
    if (fresh) addPhotograph(rows, entry.id, photographId, fresh);
  }
  return {
    id,
    entry: entry.slug,
    number,
    contentHash: hash,
    parents,
    authors,
    field: content.field,
    maker: content.maker,
    has: whatItHas(content, photographs),
  };
}

function addPhotograph(
  rows: RevisionRows,
  entryId: string,
  id: string,
  { region, vectors, entry: _entry, ...facts }: PhotographToRecord,
): void {
  rows.photographs.push({
    ...facts,
    id,
    entryId,
    regionX: region.x,
    regionY: region.y,
    regionWidth: region.width,
    regionHeight: region.height,
    regionTurn: region.turn,
  });
  for (const [model, described] of vectors ?? [])
    rows.vectors.push({ id, model, vector: write(described), details: writeDetails(described) });
}
