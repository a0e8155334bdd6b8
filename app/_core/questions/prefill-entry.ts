import { parsePeriod } from "../dates/parse.ts";
import type { Knowledge } from "../look-ups/knowledge.ts";
import { acceptedAnswer } from "./decide.ts";
import type { EntryTyped } from "./parse-entry.ts";
import type { Question } from "./question.ts";

/** The facts of a question as they are offered for the entry that is made of it; each can be changed. */
export function prefillEntry(
  question: Exclude<Question, { state: "unasked" }>,
  asked: Knowledge,
  terms: { readonly licence: string; readonly credit: string },
): Partial<EntryTyped> {
  const answer = acceptedAnswer(question);
  const words = answer?.kind === "words" ? answer : null;
  const size =
    asked.widthMm !== null && asked.heightMm !== null ? `${asked.widthMm} x ${asked.heightMm}` : "";
  return {
    title: words?.mark || question.title,
    kind: asked.kind ?? "",
    new_maker: words?.maker ?? "",
    words: asked.letters.replace(/[?*…]+/g, "[...]"),
    technique: asked.technique ?? "",
    material: asked.material,
    size_mm: size,
    period: words && parsePeriod(words.period).ok ? words.period.trim() : "",
    description: question.text,
    ...terms,
  };
}
