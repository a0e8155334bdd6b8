import { makeSlug } from "#core/entries/make-slug";
import type { FieldError } from "#core/field-error";
import type { FolderError, FolderRecord } from "#core/import/folder-record";
import { decide, whyNoEntry } from "#core/questions/decide";
import { questionOf } from "#core/questions/evolve";
import type { KeptQuestion } from "#core/questions/kept-question";
import type { EntryToMake } from "#core/questions/parse-entry";
import { fail, ok, type Result } from "#core/result";
import { isAsker } from "./members/is-asker.ts";
import type { Blobs, Clock, ImportFolder, Keys, Questions, References } from "./ports.ts";

type Needs = {
  readonly questions: Questions;
  readonly references: References;
  readonly blobs: Blobs;
  readonly keys: Keys;
  readonly clock: Clock;
  /** Takes a folder of references in, whole or not at all: the import's own use case. */
  readonly takeIn: (folder: ImportFolder, by: string) => Promise<Result<unknown, readonly FolderError[]>>;
};

/**
 * The asker makes an entry of a question: it is recorded as an import records one, under review and with no votes,
 * and each links to the other from then on.
 * @param by who is named as the author of its revision
 * @returns the entry's slug
 */
export async function makeEntry(
  needs: Needs,
  asked: {
    readonly id: string;
    readonly key: string | null;
    /** Who is signed in. */
    readonly member?: string | null;
    readonly entry: EntryToMake;
    readonly by: string;
  },
): Promise<Result<string, readonly FieldError[]>> {
  const kept = await needs.questions.find(asked.id);
  if (!kept) return fail([{ field: "question", rule: "question-unknown", received: asked.id }]);
  const member = asked.member ?? null;
  if (!isAsker(needs.keys, kept, { key: asked.key, member }))
    return fail([
      { field: "question", rule: "asker-only", received: asked.key === null ? "none" : "another" },
    ]);
  const refused = whyNoEntry(questionOf(kept.events));
  if (refused) return fail([refused]);
  const { newMaker, content } = asked.entry;
  if (newMaker && (await needs.references.knownMakers([newMaker.key])).has(newMaker.key))
    return fail([{ field: "new_maker", rule: "maker-here-already", received: newMaker.name }]);
  const slug = await freeSlug(needs.references, content.title);
  const taken = await needs.takeIn(folderOf(needs.blobs, kept, asked.entry, slug), asked.by);
  if (!taken.ok) return fail(taken.error);
  return link(needs, asked.id, slug, member);
}

/** Proposals may have come while the photographs were taken in; the entry is there by then, so it is linked anyway. */
async function link(
  { questions, clock }: Needs,
  id: string,
  entry: string,
  member: string | null,
): Promise<Result<string, readonly FieldError[]>> {
  for (;;) {
    const kept = await questions.find(id);
    if (!kept) return fail([{ field: "question", rule: "question-unknown", received: id }]);
    const at = clock.now().toISOString();
    const decided = decide(questionOf(kept.events), { type: "make an entry", entry, at });
    if (!decided.ok) return fail([decided.error]);
    const after = questionOf([...kept.events, ...decided.value]);
    if (await questions.append(id, kept.events.length, decided.value, after, member)) return ok(entry);
  }
}

/** The title as an address, with a number behind it when another entry has that address. */
async function freeSlug(references: References, title: string): Promise<string> {
  const wanted = makeSlug(title) || "mark";
  for (let number = 1; ; number++) {
    const slug = number === 1 ? wanted : `${wanted}-${number}`;
    if (!(await references.knownEntries([slug])).has(slug)) return slug;
  }
}

/** The question as a folder of references, so that the import's own rules judge it. */
function folderOf(blobs: Blobs, kept: KeptQuestion, entry: EntryToMake, slug: string): ImportFolder {
  const record = (columns: FolderRecord["columns"], line: number): FolderRecord => ({
    file: "question",
    line,
    columns,
  });
  const { shows, licence, credit } = entry.photographs;
  return {
    makers: entry.newMaker ? [record(entry.newMaker, 1)] : [],
    entries: [record({ ...entry.columns, key: slug }, 1)],
    photographs: kept.photographs.map(({ sha256, region }, i) => {
      const box = [region.x, region.y, region.width, region.height].join(",");
      const terms = { shows, licence, credit, region: box, turn: String(region.turn) };
      return record({ file: sha256, entry: slug, ...terms }, i + 1);
    }),
    errors: [],
    photograph: (file) => blobs.get(file),
  };
}
