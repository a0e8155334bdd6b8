import { fail, ok } from "#core/result";
import type { RevisionToSubmit, Submissions } from "../_usecases/ports/review.ts";
import { addRevision } from "./add-revision.ts";
import type { Database } from "./database.ts";
import { createEntries, entriesToRevise, idsOfMakers, type ToRevise } from "./entries-to-revise.ts";
import type { Prisma } from "./generated/client.ts";
import { shownAs } from "./record-revisions.ts";
import { Refused } from "./refused.ts";
import { emptyRows, writeRevisionRows } from "./revision-rows.ts";
import { again } from "./trails-store.ts";
import { writeTrails } from "./write-trails.ts";

type Tx = Prisma.TransactionClient;

/** Where members' revisions are recorded. */
export function createSubmissions({ prisma }: Database): Submissions {
  return {
    async record(revision, decide) {
      try {
        return ok(await again(() => prisma.$transaction((tx) => record(tx, revision, decide))));
      } catch (error) {
        if (!(error instanceof Refused)) throw error;
        const { entry: _, ...refusal } = error.refusal;
        return fail(refusal);
      }
    },
  };
}

async function record(tx: Tx, revision: RevisionToSubmit, decide: Parameters<Submissions["record"]>[1]) {
  const { content, parents } = revision;
  const entry = await find(tx, revision);
  const { newest } = entry;
  if (newest && !parents.includes(newest.id))
    throw refused(entry.slug, "revision", "revised-meanwhile", newest.id, { number: newest.number });
  const makerId = content.maker === null ? null : (await idsOfMakers(tx, [content.maker])).get(content.maker);
  if (makerId === undefined) throw refused(entry.slug, "maker", "maker-unknown", content.maker ?? "");
  const rows = emptyRows();
  const recorded = addRevision(rows, {
    ...revision,
    entry,
    number: (newest?.number ?? 0) + 1,
    shown: revision.photographs.map((photograph) => shownAs(entry, { ...photograph, entry: entry.slug })),
    makerId,
  });
  if (recorded.contentHash === newest?.contentHash)
    throw refused(entry.slug, "revision", "nothing-changed", String(newest.number));
  const events = decide(entry.traced.events, recorded);
  if (!events.ok) throw new Refused({ ...events.error, entry: entry.slug });
  await writeRevisionRows(tx, rows);
  await writeTrails(tx, [{ traced: entry.traced, events: events.value }]);
  return { slug: entry.slug, revision: recorded.id, number: recorded.number };
}

/** The entry that is revised; a new one has the slug that was asked for, or the next that is free. */
async function find(tx: Tx, { entry: { slug, isNew } }: RevisionToSubmit): Promise<ToRevise> {
  if (!isNew) {
    const found = (await entriesToRevise(tx, [slug])).get(slug);
    if (!found) throw refused(slug, "entry", "entry-not-here", slug);
    return found;
  }
  for (let number = 1; ; number++) {
    const wanted = number === 1 ? slug : `${slug}-${number}`;
    if (await tx.entry.findUnique({ where: { slug: wanted }, select: { id: true } })) continue;
    const [made] = await createEntries(tx, [wanted]);
    if (made) return made;
  }
}

const refused = (
  entry: string,
  field: string,
  rule: string,
  received: string,
  params?: Readonly<Record<string, string | number>>,
) => new Refused({ entry, field, rule, received, ...(params ? { params } : {}) });
