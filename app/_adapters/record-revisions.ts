import { v7 as uuidv7 } from "uuid";
import { statedContent } from "#core/entries/content-of";
import type { EntryContent } from "#core/entries/entry";
import { fingerprint } from "#core/photographs/fingerprint";
import type { EntryEvent, RecordedRevision } from "#core/review/entry-event";
import { recordAndSubmit } from "#core/review/record-and-submit";
import type { PhotographToRecord, References } from "../_usecases/ports.ts";
import { addRevision, contentHash, type Shown } from "./add-revision.ts";
import { idsOfMakers, type KnownRevision, type ToRevise } from "./entries-to-revise.ts";
import type { Prisma } from "./generated/client.ts";
import { Refused } from "./refused.ts";
import { emptyRows, writeRevisionRows } from "./revision-rows.ts";
import { writeTrails } from "./write-trails.ts";

type Tx = Prisma.TransactionClient;
type Batch = Parameters<References["record"]>[0];

/**
 * Records what an import says of entries: a revision of each that it changes, with its place in the trail.
 * @throws Refused when the rules refuse one, so that nothing is recorded
 */
export async function recordRevisions(
  tx: Tx,
  batch: Batch,
  before: ReadonlyMap<string, ToRevise>,
): Promise<{ revisions: number; photographs: number }> {
  const contents = new Map(batch.entries.map((e) => [e.slug, e.content]));
  const arriving = byEntry(batch.photographs);
  const makers = [...contents.values()].flatMap((content) => content.maker ?? []);
  const makerIds = await idsOfMakers(tx, [...makers, ...[...before.values()].flatMap(makersOf)]);
  const rows = emptyRows();
  const added: { traced: ToRevise["traced"]; events: readonly EntryEvent[] }[] = [];
  for (const slug of new Set([...contents.keys(), ...arriving.keys()])) {
    const entry = before.get(slug);
    if (!entry) throw new Error(`Entry ${slug} is not there to be revised.`);
    const next = whatIsNew(entry, contents.get(slug), arriving.get(slug) ?? []);
    if (next === null) continue;
    const recorded = addRevision(rows, {
      entry,
      ...next,
      number: (entry.newest?.number ?? 0) + 1,
      parents: entry.newest ? [entry.newest.id] : [],
      makerId: makerIds.get(next.content.maker ?? "") ?? null,
      authors: [],
      createdBy: batch.by,
      summary: "",
      at: batch.at,
    });
    added.push({ traced: entry.traced, events: decided(entry, recorded, batch) });
  }
  await writeRevisionRows(tx, rows);
  await writeTrails(tx, added);
  return { revisions: rows.revisions.length, photographs: rows.photographs.length };
}

const makersOf = ({ newest }: ToRevise): readonly string[] =>
  newest?.content.maker ? [newest.content.maker] : [];

function decided(
  { slug, traced }: ToRevise,
  revision: RecordedRevision,
  batch: Batch,
): readonly EntryEvent[] {
  const { at, by, policy } = batch;
  const events = recordAndSubmit(traced.events, { at, by: { importer: by }, revision, policy });
  if (!events.ok) throw new Refused({ ...events.error, entry: slug });
  return events.value;
}

/**
 * What an import says that is neither in the newest revision nor in the latest import: a folder taken in a second
 * time does not take back what members have written since.
 */
function whatIsNew(
  entry: ToRevise,
  said: EntryContent | undefined,
  arriving: readonly PhotographToRecord[],
): { readonly content: EntryContent; readonly shown: readonly Shown[] } | null {
  const upon = (base: KnownRevision | null) => {
    const content = said ?? base?.content;
    if (!content) throw new Error(`Entry ${entry.slug} has no content to revise.`);
    const shown = mergePhotographs(entry, base, arriving);
    const photographs = shown.map(({ photograph }) => photograph);
    const same = base?.contentHash === contentHash(entry.slug, statedContent(content), photographs);
    return same ? null : { content, shown };
  };
  return entry.imported !== null && upon(entry.imported) === null ? null : upon(entry.newest);
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

/** The photographs an entry shows from now on: those it has, each replaced by a newer statement about the same image. */
function mergePhotographs(
  entry: ToRevise,
  base: KnownRevision | null,
  arriving: readonly PhotographToRecord[],
): readonly Shown[] {
  const shown = (base?.photographs ?? []).map(
    (photograph): Shown => ({ id: photograph.id, photograph, fresh: null }),
  );
  for (const fresh of arriving) {
    const next = shownAs(entry, fresh);
    const place = shown.findIndex(({ photograph }) => photograph.sha256 === fresh.sha256);
    if (place < 0) shown.push(next);
    else shown[place] = next;
  }
  return shown;
}

/** A photograph that the entry has, or had before, stays the one it was. */
export function shownAs(entry: ToRevise, photograph: PhotographToRecord): Shown {
  const known = entry.photographs.get(fingerprint({ ...photograph, entry: entry.slug }));
  if (known) return { id: known.id, photograph: known, fresh: null };
  const id = uuidv7();
  return { id, photograph: { ...photograph, id }, fresh: photograph };
}
