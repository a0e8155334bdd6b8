import { draftPhotograph } from "#core/drafts/three-ways";
import { typeContent } from "#core/drafts/type-content";
import type { FieldError } from "#core/field-error";
import { fail, ok, type Result } from "#core/result";
import type { Drafts, Randomness, Revisions } from "./ports.ts";

type Needs = {
  readonly drafts: Drafts;
  readonly revisions: Revisions;
  readonly randomness: Randomness;
};

/** Drafts that a member may have open at once. */
const MOST = 50;

/**
 * Begins a draft: an empty one, or the next revision of an entry with the content of one of its revisions. Begun from
 * an older one it takes the entry back to what it said then.
 * @returns its id
 */
export async function startDraft(
  { drafts, revisions, randomness }: Needs,
  owner: string,
  from: { readonly entry: string; readonly number: number } | null,
): Promise<Result<string, FieldError>> {
  const open = (await drafts.list(owner, MOST + 1)).filter(({ submitted }) => submitted === null);
  if (open.length >= MOST)
    return fail({
      field: "draft",
      rule: "drafts-most",
      received: String(open.length),
      params: { most: MOST },
    });
  const id = randomness.token();
  if (from === null) {
    await drafts.create({ id, owner, entry: null, parents: [], basedOn: null, typed: {}, photographs: [] });
    return ok(id);
  }
  const found = await revisions.shown(from.entry, from.number);
  if (!found) return fail({ field: "revision", rule: "revision-unknown", received: String(from.number) });
  const { view, line } = found;
  // What the newest revision says is known to whoever begins with an older one: it is a parent as well.
  const newest = (await revisions.list(from.entry)).at(-1);
  await drafts.create({
    id,
    owner,
    entry: from.entry,
    parents: [...new Set([line.id, newest?.id ?? line.id])],
    basedOn: line.id,
    typed: typeContent(view.content, view.photographs),
    photographs: view.photographs.map(draftPhotograph),
  });
  return ok(id);
}
