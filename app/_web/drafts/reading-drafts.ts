import { parseInterval } from "#core/dates/parse";
import type { Draft } from "#core/drafts/draft";
import { mergeTyped } from "#core/drafts/merge-typed";
import { type ReadDraft, readDraft } from "#core/drafts/read-draft";
import { tidyTyped, typedOf } from "#core/drafts/tidy-typed";
import type { EntrySummary, EntryView } from "#core/entries/entry";
import type { Merged } from "#core/entries/merge-content";
import type { RevisionLine, RevisionView } from "#core/entries/revision";
import { isSlug } from "#core/entries/slug";
import type { Typed } from "#core/questions/typed-text";
import { findAlike } from "#usecases/find-alike";
import type { NearestEntry } from "#usecases/look-up/show-nearest";
import { chooseModel } from "#usecases/look-up-mark";
import { type Meanwhile, weighMeanwhile } from "#usecases/weigh-meanwhile";
import { type KeptForm, keptForm } from "../kept-forms.ts";
import { live } from "../live.ts";
import { showEntry } from "../reading.ts";
import { writer } from "./own-draft.ts";
import { typedIn } from "./read-draft-form.ts";

export { keptForm } from "../kept-forms.ts";
export { ownDraft } from "./own-draft.ts";

/** Drafts listed at once. */
const LISTED = 200;

/** A line of a member's drafts and submissions. */
export type DraftLine = { readonly draft: Draft; readonly entry: EntrySummary | null };

/** The drafts and submissions of whoever asks, each with its entry as it stands now; null when nobody is signed in. */
export async function listDrafts(): Promise<readonly DraftLine[] | null> {
  const member = await writer();
  if (!member) return null;
  const drafts = await (await live()).drafts.list(member.id, LISTED);
  return Promise.all(
    drafts.map(async (draft) => {
      const slug = draft.submitted?.slug ?? draft.entry;
      return { draft, entry: slug === null ? null : ((await showEntry(slug))?.summary ?? null) };
    }),
  );
}

/** What came while a draft was being written; null when nothing did. */
export async function meanwhileOf(draft: Draft): Promise<Meanwhile | null> {
  return weighMeanwhile((await live()).revisions, draft);
}

/** What a form says that was made from an older version, beside what is saved; null when it is forgotten. */
export function differingFrom(
  draft: Draft,
  name: string | string[] | undefined,
): (Merged & { readonly mine: string; readonly base: string }) | null {
  const kept = keptForm(name)?.typed;
  if (!kept) return null;
  const { mine = "{}", base = "{}" } = kept;
  return { ...mergeTyped(typedIn(base), typedIn(mine), draft.typed), mine, base };
}

export const read = (draft: Draft): ReadDraft =>
  readDraft(typedOf(draft), draft.photographs, draft.entry !== null);

/**
 * What the form shows: as it is saved or, when it was sent while nobody was signed in any more, as it was typed then.
 */
export function typedAgain(draft: Draft, kept: KeptForm | null): Typed {
  const sent = tidyTyped(kept?.typed ?? {});
  return Object.keys(sent).length > 0 && Number(kept?.typed.version) === draft.version ? sent : draft.typed;
}

/** Does a draft begin with the content of a revision that is not the newest? */
export async function startsEarlier(draft: Draft): Promise<boolean> {
  if (draft.entry === null) return false;
  const newest = (await listRevisions(draft.entry)).at(-1);
  return draft.basedOn !== newest?.id && draft.parents.includes(newest?.id ?? "");
}

/** A draft as the entry's page would show it. */
export async function previewOf(draft: Draft, name: string): Promise<EntryView> {
  const { content, photographs, newMaker } = read(draft);
  const wired = await live();
  const [maker, ...related] = await Promise.all([
    content.maker === null || newMaker ? null : wired.makers.bySlug(content.maker),
    ...content.relations.map(({ entry }) => showEntry(entry)),
  ]);
  const shown = photographs.map((each) => ({ ...each, id: each.sha256 }));
  const period = content.period === null ? null : parseInterval(content.period);
  return {
    summary: {
      slug: draft.entry ?? "",
      title: content.title,
      kind: content.kind,
      state: "draft",
      technique: content.technique,
      material: content.material,
      period: period?.ok ? period.value : null,
      maker: newMaker
        ? { slug: "", name: newMaker.name, place: newMaker.place ?? "" }
        : maker && { slug: maker.summary.slug, name: maker.summary.name, place: maker.summary.place },
      photograph: shown[0] ?? null,
      photographCount: shown.length,
    },
    content,
    photographs: shown,
    hidden: { photographs: 0, texts: [] },
    relations: content.relations.flatMap(({ kind, entry }) => {
      const found = related.find((each) => each?.summary.slug === entry);
      return found ? [{ kind, entry: found.summary }] : [];
    }),
    revision: {
      id: "",
      number: 0,
      contentHash: "",
      createdAt: draft.updatedAt.toISOString(),
      createdBy: name,
    },
  };
}

/** The entries nearest to all photographs of a draft. */
export async function alikeOf(draft: Draft): Promise<readonly NearestEntry[]> {
  const wired = await live();
  if (wired.queue.isFull || draft.photographs.length === 0) return [];
  const { photographs } = read(draft);
  const needs = { ...wired, chosen: () => chooseModel(wired) };
  const found = await wired.queue.run(() => findAlike(needs, photographs.slice(0, 3), draft.entry));
  return found.ok ? found.value : [];
}

/** Any revision of an entry; null when there is none of that number. */
export async function showRevision(slug: string, number: string): Promise<RevisionView | null> {
  if (!isSlug(slug) || !/^[1-9]\d{0,8}$/.test(number)) return null;
  return (await live()).revisions.shown(slug, Number(number));
}

/** All revisions of an entry, oldest first. */
export async function listRevisions(slug: string): Promise<readonly RevisionLine[]> {
  return isSlug(slug) ? (await live()).revisions.list(slug) : [];
}

/** An open draft of whoever asks that revises an entry already. */
export async function openDraftOf(slug: string): Promise<Draft | null> {
  const member = await writer();
  if (!member) return null;
  const drafts = await (await live()).drafts.list(member.id, LISTED);
  return drafts.find(({ entry, submitted }) => entry === slug && submitted === null) ?? null;
}
