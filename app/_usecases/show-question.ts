import { questionOf } from "#core/questions/evolve";
import type { QuestionView } from "#core/questions/question-view";
import { isAsker } from "./members/is-asker.ts";
import type { Entries, Keys, Questions } from "./ports.ts";

type Needs = { readonly questions: Questions; readonly entries: Entries; readonly keys: Keys };

/** A question with the entries it names; null when there is none of that id. */
export async function showQuestion(
  needs: Needs,
  id: string,
  key: string | null,
  member: string | null = null,
): Promise<QuestionView | null> {
  const found = await needs.questions.find(id);
  if (!found) return null;
  const { keyHash, askerMember, ...kept } = found;
  const question = questionOf(kept.events);
  if (question.state === "unasked") return null;
  const named = question.proposals.flatMap(({ answer }) => (answer.kind === "entry" ? [answer.entry] : []));
  const slugs = [...new Set([...named, ...(question.entry ? [question.entry] : [])])];
  const views = await Promise.all(slugs.map((slug) => needs.entries.bySlug(slug)));
  const entries = new Map(
    views.flatMap((view) => (view ? [[view.summary.slug, view.summary] as const] : [])),
  );
  return { kept, question, entries, mine: isAsker(needs.keys, { keyHash, askerMember }, { key, member }) };
}
