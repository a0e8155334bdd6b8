import type { FieldError } from "#core/field-error";
import { decide } from "#core/questions/decide";
import { questionOf } from "#core/questions/evolve";
import type { QuestionCommand } from "#core/questions/question";
import { fail, ok, type Result } from "#core/result";
import { isAsker } from "./members/is-asker.ts";
import type { Blobs, Clock, Entries, Keys, LookUps, Questions } from "./ports.ts";

type Needs = {
  readonly questions: Questions;
  readonly entries: Entries;
  readonly lookUps: LookUps;
  readonly blobs: Blobs;
  readonly keys: Keys;
  readonly clock: Clock;
};

/** What somebody wants to happen to a question; when is up to the clock. */
export type Change = QuestionCommand extends infer C
  ? C extends { at: string }
    ? Omit<C, "at">
    : never
  : never;

/** How often a change is decided anew because others changed the question meanwhile. */
const TRIES = 8;

/**
 * Does something to a question. Anybody may propose; everything else is the asker's, who is known by the key, or as a
 * member.
 * Doing it twice changes nothing the second time.
 * @param key what the client holds; null when it holds none
 * @param member who is signed in
 */
export async function changeQuestion(
  needs: Needs,
  id: string,
  key: string | null,
  command: Change,
  member: string | null = null,
): Promise<Result<null, FieldError>> {
  const unknown = await unknownEntry(needs.entries, command);
  if (unknown) return fail(unknown);
  for (let tried = 0; tried < TRIES; tried++) {
    const kept = await needs.questions.find(id);
    if (!kept) return fail({ field: "question", rule: "question-unknown", received: id });
    if (command.type !== "propose" && !isAsker(needs.keys, kept, { key, member }))
      return fail({ field: "question", rule: "asker-only", received: key === null ? "none" : "another" });
    const before = questionOf(kept.events);
    const decided = decide(before, { ...command, at: needs.clock.now().toISOString() } as QuestionCommand);
    if (!decided.ok) return decided;
    if (decided.value.length === 0) return ok(null);
    const after = questionOf([...kept.events, ...decided.value]);
    if (!(await needs.questions.append(id, kept.events.length, decided.value, after, member))) continue;
    if (after.state === "withdrawn") await letGo(needs, kept.photographs);
    return ok(null);
  }
  return fail({ field: "request", rule: "question-busy", received: id });
}

async function unknownEntry(entries: Entries, command: Change): Promise<FieldError | null> {
  if (command.type !== "propose" || command.answer.kind !== "entry") return null;
  const { entry } = command.answer;
  const found = await entries.bySlug(entry);
  return found ? null : { field: "entry", rule: "entry-not-here", received: entry };
}

/** The images go with the question, unless something else shows them. */
async function letGo(
  { lookUps, blobs }: Needs,
  photographs: readonly { readonly sha256: string }[],
): Promise<void> {
  for (const { sha256 } of photographs) if (!(await lookUps.imageInUse(sha256))) await blobs.remove(sha256);
}
