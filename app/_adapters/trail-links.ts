import { type Hash, linksAfter, type TrailEvent } from "#core/trail/chain";
import type { Link } from "#core/trail/link";
import { canonicalJson, hashOfValue } from "./canonical-json.ts";
import type { Prisma } from "./generated/client.ts";
import { chunks } from "./revision-rows.ts";

type Tx = Prisma.TransactionClient;
type Row = Prisma.TrailLinkGetPayload<object>;

/** Links of these trails, each trail's in order; a trail without any is missing. */
export async function readLinks(tx: Tx, trails: readonly string[]): Promise<Map<string, Link[]>> {
  const found = new Map<string, Link[]>();
  for (const part of chunks(trails)) {
    const rows = await tx.trailLink.findMany({
      where: { trail: { in: [...part] } },
      orderBy: [{ trail: "asc" }, { number: "asc" }],
    });
    for (const row of rows) {
      const link = toLink(row);
      const links = found.get(link.trail);
      if (links) links.push(link);
      else found.set(link.trail, [link]);
    }
  }
  return found;
}

/** Adds events to trails, each after the last link it is given. */
export async function appendLinks(
  tx: Tx,
  appended: readonly {
    readonly trail: string;
    readonly last: Pick<Link, "number" | "hash"> | null;
    readonly events: readonly TrailEvent[];
  }[],
  hash: Hash = hashOfValue,
): Promise<void> {
  const rows = appended.flatMap(({ trail, last, events }) =>
    linksAfter(trail, last, events, hash).map(toRow),
  );
  for (const data of chunks(rows)) await tx.trailLink.createMany({ data: [...data] });
}

function toRow({ trail, number, type, at, by, payload, previous, hash }: Link) {
  const date = new Date(at);
  if (date.toISOString() !== at)
    throw new RangeError(`at must be ISO 8601 to the millisecond. Received ${at}.`);
  return {
    trail,
    number,
    type,
    at: date,
    byId: by.id,
    byName: by.name,
    payload: canonicalJson(payload),
    previousHash: previous,
    hash,
  };
}

export function toLink(row: Row): Link {
  return {
    trail: row.trail,
    number: row.number,
    type: row.type,
    at: row.at.toISOString(),
    by: { id: row.byId, name: row.byName },
    payload: toPayload(row.payload),
    previous: row.previousHash,
    hash: row.hash,
  };
}

/**
 * The payload as it was hashed. A text that is not the canonical JSON of anything was changed since: it stands for
 * itself then, so that its hash is another.
 */
function toPayload(text: string): unknown {
  try {
    const payload: unknown = JSON.parse(text);
    return canonicalJson(payload) === text ? payload : text;
  } catch {
    return text;
  }
}
