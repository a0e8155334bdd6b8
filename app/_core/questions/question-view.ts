import type { EntrySummary } from "../entries/entry.ts";
import type { KeptQuestion } from "./kept-question.ts";
import type { Question } from "./question.ts";

/** A question as its page shows it. */
export type QuestionView = {
  readonly kept: KeptQuestion;
  readonly question: Exclude<Question, { state: "unasked" }>;
  /** Entries that were proposed, or made from it, by slug, as they stand now. */
  readonly entries: ReadonlyMap<string, EntrySummary>;
  /** Whoever looks holds the asker's key. */
  readonly mine: boolean;
};
