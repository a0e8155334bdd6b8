import { parseEntry } from "#core/questions/parse-entry";
import { importReferences } from "#usecases/import-references";
import { makeEntry } from "#usecases/make-entry";
import { signedInMember } from "./actor.ts";
import { askerKey } from "./asker-keys.ts";
import { countClient } from "./client-pace.ts";
import { keepForm } from "./kept-forms.ts";
import { live } from "./live.ts";
import { showQuestion } from "./reading-questions.ts";
import { done, isToken, readWords, refuse } from "./words-form.ts";

/**
 * Makes an entry of a question from a form. A person sees first how it is understood, and again whenever the period
 * was changed since it was shown; a program that sends the period it means as `understood` is taken at its word.
 */
export async function enterQuestion(request: Request, id: string): Promise<Response> {
  if (!isToken(id)) return new Response(null, { status: 404 });
  const page = `/questions/${id}/entry`;
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, page);
  const { understood, ...typed } = form.value;
  const entry = parseEntry(typed);
  if (!entry.ok) return refuse(request, entry.error, typed, page);
  const period = entry.value.content.period ?? "";
  if (understood !== period)
    return done(
      request,
      { understood: entry.value.content },
      `${page}?form=${keepForm({ errors: [], typed })}`,
    );
  const [wired, found] = [await live(), await showQuestion(id)];
  const tooSoon = countClient(request, "enter");
  if (tooSoon) return refuse(request, [tooSoon], typed, page);
  if (wired.makingEntries.isFull) {
    const busy = { field: "request", rule: "question-busy", received: String(wired.makingEntries.waiting) };
    return refuse(request, [busy], typed, page);
  }
  const [key, member] = [await askerKey(id), await signedInMember()];
  const takeIn = (folder: Parameters<typeof importReferences>[1], by: string) =>
    importReferences(wired, folder, { dryRun: false, by });
  const result = await wired.makingEntries.run(() =>
    makeEntry({ ...wired, takeIn }, { id, key, member, entry: entry.value, by: found?.question.name ?? "" }),
  );
  if (!result.ok) return refuse(request, result.error, typed, page);
  return done(request, { entry: result.value }, `/questions/${id}?said=enter`);
}
