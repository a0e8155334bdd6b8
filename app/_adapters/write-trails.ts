import type { EntryEvent } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import { historyOf } from "#core/review/evolve";
import { type EntryProjection, projectionOf } from "#core/review/project";
import { eventOf } from "#core/trail/chain";
import type { Link } from "#core/trail/link";
import { writeWords } from "./entry-words.ts";
import type { Prisma } from "./generated/client.ts";
import { chunks } from "./revision-rows.ts";
import { appendLinks, readLinks } from "./trail-links.ts";

type Tx = Prisma.TransactionClient;

/** An entry with its trail as far as it goes. */
export type Traced = {
  readonly id: string;
  readonly events: readonly EntryEvent[];
  readonly last: Pick<Link, "number" | "hash"> | null;
};

const trailOf = (entry: string): string => `entry:${entry}`;

/** The trails of these entries; one that has none yet has no events. */
export async function readTrails(tx: Tx, entries: readonly string[]): Promise<ReadonlyMap<string, Traced>> {
  const found = await readLinks(tx, entries.map(trailOf));
  return new Map(
    entries.map((id) => {
      const links = found.get(trailOf(id)) ?? [];
      return [id, { id, events: links.map((link) => eventOf<EntryEvent>(link)), last: links.at(-1) ?? null }];
    }),
  );
}

/**
 * Adds events to the trails of entries, and brings what is kept beside them up to it: state, shown revision, words to
 * search by, what is hidden. The entries' rows must be locked.
 * @returns the histories, in the same order
 */
export async function writeTrails(
  tx: Tx,
  added: readonly { readonly traced: Traced; readonly events: readonly EntryEvent[] }[],
): Promise<readonly EntryHistory[]> {
  await appendLinks(
    tx,
    added.map(({ traced, events }) => ({ trail: trailOf(traced.id), last: traced.last, events })),
  );
  await keepEvidence(tx, added);
  const histories = added.map(({ traced, events }) => historyOf([...traced.events, ...events]));
  await project(
    tx,
    added.map(({ traced, events }, i) => ({
      entry: traced.id,
      // biome-ignore lint/style/noNonNullAssertion: as many histories as there are entries
      next: projectionOf(histories[i]!),
      hides: events.some(({ type }) => type === "content hidden" || type === "act undone"),
    })),
  );
  return histories;
}

/** The images of a challenge are in use as long as its trail is there. */
async function keepEvidence(tx: Tx, added: Parameters<typeof writeTrails>[1]): Promise<void> {
  const data = added.flatMap(({ traced, events }) =>
    events.flatMap((event) =>
      event.type === "challenged"
        ? event.evidence.photographs.map(({ sha256 }, position) => ({
            entryId: traced.id,
            challenge: event.challenge,
            position,
            sha256,
          }))
        : [],
    ),
  );
  if (data.length > 0) await tx.evidencePhotograph.createMany({ data });
}

type Projected = { readonly entry: string; readonly next: EntryProjection; readonly hides: boolean };

async function project(tx: Tx, projected: readonly Projected[]): Promise<void> {
  const hiding = projected.filter(({ hides }) => hides);
  const reworded = hiding.map(({ entry }) => entry);
  for (const part of chunks(projected)) {
    const rows = await update(tx, part);
    reworded.push(...rows.filter(({ turned }) => turned).map(({ id }) => id));
  }
  for (const { entry, next } of hiding)
    await tx.$executeRaw`UPDATE photographs SET hidden = id = ANY (${[...next.hiddenPhotographs]}::uuid[])
      WHERE entry_id = ${entry}::uuid`;
  await writeWords(tx, [...new Set(reworded)]);
}

/** @returns of each entry, whether it shows another revision than before */
function update(tx: Tx, projected: readonly Projected[]) {
  const rows = JSON.stringify(projected.map(toRow));
  return tx.$queryRaw<{ id: string; turned: boolean }[]>`
    WITH next AS (SELECT * FROM jsonb_to_recordset(${rows}::jsonb) AS given (
      id uuid, state text, shown uuid, verified uuid, field text, review uuid, submitted timestamptz,
      closes timestamptz, voters uuid[], challenged boolean, replaced_by text, merged boolean, locked boolean,
      listed boolean, hidden_texts text[])),
    before AS (SELECT entries.id, current_revision_id AS shown FROM entries JOIN next ON next.id = entries.id)
    UPDATE entries SET state = next.state, current_revision_id = next.shown, verified_revision_id = next.verified,
      field = next.field, review_revision_id = next.review, review_submitted_at = next.submitted,
      review_closes_at = next.closes, review_voters = next.voters, challenged = next.challenged,
      replaced_by = next.replaced_by, merged = next.merged, locked = next.locked, listed = next.listed,
      hidden_texts = next.hidden_texts
    FROM next JOIN before ON before.id = next.id
    WHERE entries.id = next.id
    RETURNING entries.id, before.shown IS DISTINCT FROM next.shown AS turned`;
}

const toRow = ({ entry, next }: Projected) => ({
  id: entry,
  state: next.state,
  shown: next.shown,
  verified: next.verified,
  field: next.field,
  review: next.review?.revision ?? null,
  submitted: next.review?.submittedAt ?? null,
  closes: next.review?.closesAt ?? null,
  voters: next.review?.voters ?? [],
  challenged: next.challenged,
  replaced_by: next.replacedBy,
  merged: next.merged,
  locked: next.locked,
  listed: next.listed,
  hidden_texts: next.hiddenTexts,
});
