import type { EntryContent } from "#core/entries/entry";
import { servedContent } from "#core/entries/hidden-texts";
import { joinInitials } from "#core/entries/initials";
import { plainLetters } from "#core/reading/plain-letters";
import type { Prisma } from "./generated/client.ts";
import { chunks } from "./revision-rows.ts";

type Tx = Prisma.TransactionClient;

/** Writes anew by which words entries are found: those of the revision that each shows, but none that are hidden. */
export async function writeWords(tx: Tx, entries: readonly string[]): Promise<void> {
  for (const ids of chunks(entries)) {
    const rows = await tx.entry.findMany({
      where: { id: { in: [...ids] } },
      select: {
        id: true,
        hiddenTexts: true,
        currentRevision: { select: { id: true, content: true, makerId: true } },
      },
    });
    const words = rows.flatMap(({ id, hiddenTexts, currentRevision: revision }) => {
      if (!revision) return [];
      const content = servedContent(
        revision.content as unknown as EntryContent,
        revision.id,
        hiddenTexts,
        "",
      );
      return [{ entry: id, title: content.title, maker: revision.makerId, ...wordsOf(content) }];
    });
    await upsert(tx, words);
  }
}

type Words = {
  readonly entry: string;
  readonly title: string;
  readonly maker: string | null;
  readonly names: string;
  readonly body: string;
  readonly letters: string;
};

async function upsert(tx: Tx, words: readonly Words[]): Promise<void> {
  await tx.$executeRaw`INSERT INTO retrieval.entry_words (entry_id, title, names, body, letters)
    SELECT w.entry, w.title, concat_ws(' ', w.names, makers.name), concat_ws(' ', w.body, makers.place), w.letters
    FROM unnest(${words.map((w) => w.entry)}::uuid[], ${words.map((w) => w.title)}::text[], ${words.map((w) => w.names)}::text[],
      ${words.map((w) => w.body)}::text[], ${words.map((w) => w.letters)}::text[],
      ${words.map((w) => w.maker)}::uuid[]) AS w (entry, title, names, body, letters, maker)
    LEFT JOIN makers ON makers.id = w.maker
    ON CONFLICT (entry_id) DO UPDATE SET title = excluded.title, names = excluded.names, body = excluded.body,
      letters = excluded.letters`;
}

function wordsOf(c: EntryContent): Pick<Words, "names" | "body" | "letters"> {
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
