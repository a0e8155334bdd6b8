import { cache } from "react";
import type { KeptQuestion } from "#core/questions/kept-question";
import type { QuestionView } from "#core/questions/question-view";
import { showQuestion as show } from "#usecases/show-question";
import { signedInMember } from "./actor.ts";
import { askerKey } from "./asker-keys.ts";
import { live } from "./live.ts";

export { keptForm } from "./kept-forms.ts";

/** Questions on one page of their list. */
const PAGE = 20;

/** A question, and whether this browser is its asker's; asked twice in one request, it is read once. */
export const showQuestion = cache(
  async (id: string): Promise<QuestionView | null> =>
    show(await live(), id, await askerKey(id), await signedInMember()),
);

/**
 * A page of questions, open ones first.
 * @param page from 1
 */
export async function listQuestions(
  page: number,
): Promise<{ readonly questions: readonly KeptQuestion[]; readonly more: boolean }> {
  const found = await (await live()).questions.list((page - 1) * PAGE, PAGE + 1);
  return { questions: found.slice(0, PAGE), more: found.length > PAGE };
}

/** The question that an entry was made from; null when it was made otherwise. */
export async function questionOfEntry(slug: string): Promise<KeptQuestion | null> {
  return (await live()).questions.ofEntry(slug);
}

/** The question published from a look-up; null when it is not published. */
export async function questionOfLookUp(lookUp: string): Promise<string | null> {
  return (await live()).questions.ofLookUp(lookUp);
}

/** The private address of a question, for its asker's browser alone; null in any other. */
export async function privateAddress(id: string): Promise<string | null> {
  const [found, key] = [await showQuestion(id), await askerKey(id)];
  return found?.mine && key !== null ? `/questions/${id}/asker/${key}` : null;
}
