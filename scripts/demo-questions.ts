import { randomUUID } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import type { FieldError } from "#core/field-error";
import { parseKnowledge, type TypedKnowledge } from "#core/look-ups/knowledge";
import { parseEntry } from "#core/questions/parse-entry";
import { parseDeclineReason, parseProposal } from "#core/questions/parse-proposal";
import { parsePublication } from "#core/questions/parse-publication";
import type { Typed } from "#core/questions/typed-text";
import type { Result } from "#core/result";
import { changeQuestion } from "#usecases/change-question";
import { importReferences } from "#usecases/import-references";
import { lookUpMark } from "#usecases/look-up-mark";
import { makeEntry } from "#usecases/make-entry";
import { publishLookUp } from "#usecases/publish-look-up";
import type { Live } from "#web/live";
import { sentence } from "./error-sentences.ts";

type Told = Typed & {
  readonly photograph: string;
  readonly known: TypedKnowledge;
  readonly proposals: readonly (Typed & { readonly taken?: "accepted" | "declined" })[];
  readonly entry?: Typed;
};

type Row = Readonly<Record<"file" | "region" | "turn" | "licence" | "credit", string>>;

/** Lets the demo's people ask, propose and decide as anybody does: by the forms' rules and the use cases. */
export async function askDemoQuestions(wired: Live, folder: string): Promise<number> {
  const read = (name: string) => readFile(join(folder, "questions", name), "utf8");
  const questions = JSON.parse(await read("questions.json")) as readonly Told[];
  const rows = parse<Row>(await read("photographs.csv"), { columns: true });
  for (const told of questions) {
    const row = rows.find(({ file }) => file === told.photograph);
    if (!row) throw new Error(`photograph: it must stand in photographs.csv. Received "${told.photograph}".`);
    await ask(wired, folder, told, row);
  }
  return questions.length;
}

async function ask(wired: Live, folder: string, told: Told, row: Row): Promise<void> {
  const { licence, credit } = row;
  const [x = 0, y = 0, width = 0, height = 0] = row.region.split(",").map(Number);
  const ownerHash = randomUUID();
  const lookUp = passed(
    await lookUpMark(wired, {
      photographs: [
        {
          bytes: await readFile(join(folder, told.photograph)),
          region: { x, y, width, height, turn: Number(row.turn) },
          mark: 1,
        },
      ],
      known: passed(parseKnowledge(told.known)),
      ownerHash,
      days: wired.environment.lookUpDays,
    }),
  );
  const typed = { title: told.title ?? "", about: told.about ?? "", name: told.name ?? "", licence, credit };
  const publication = passed(parsePublication({ ...typed, confirmed: "yes" }));
  const { id, key } = passed(await publishLookUp(wired, { lookUp: lookUp.id, ownerHash, publication }));
  for (const [i, { taken, ...proposal }] of told.proposals.entries()) {
    const proposed = passed(parseProposal(proposal));
    passed(await changeQuestion(wired, id, null, { type: "propose", ...proposed }));
    if (taken === "accepted")
      passed(await changeQuestion(wired, id, key, { type: "accept", proposal: i + 1 }));
    if (taken === "declined") {
      const reason = passed(parseDeclineReason({ reason: proposal.why ?? "" }));
      passed(await changeQuestion(wired, id, key, { type: "decline", proposal: i + 1, reason }));
    }
  }
  if (!told.entry) return;
  const entry = passed(parseEntry({ ...told.entry, licence, credit }));
  const takeIn = (references: Parameters<typeof importReferences>[1], by: string) =>
    importReferences(wired, references, { dryRun: false, by });
  passed(await makeEntry({ ...wired, takeIn }, { id, key, entry, by: publication.published.name }));
}

/** What a rule let pass; what it did not is a fault of the demo. */
function passed<T>(result: Result<T, FieldError | readonly FieldError[]>): T {
  if (result.ok) return result.value;
  throw new Error(`A question of the demo was refused:\n${[result.error].flat().map(sentence).join("\n")}`);
}
