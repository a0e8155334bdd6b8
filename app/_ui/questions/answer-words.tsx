import { useTranslations } from "next-intl";
import type { EntrySummary } from "#core/entries/entry";
import type { Answer } from "#core/questions/question";
import { Facts } from "../entry/facts.tsx";
import { EntryLine } from "../entry-line.tsx";
import { wordTypedPeriod } from "./typed-period.ts";

type AnswerWordsProps = { readonly answer: Answer; readonly entries: ReadonlyMap<string, EntrySummary> };

/** What a proposal takes the mark for: the entry with its photograph, or the proposer's words. */
export function AnswerWords({ answer, entries }: AnswerWordsProps) {
  const t = useTranslations("fields");
  const words = useTranslations("questions");
  const periods = useTranslations("period");
  if (answer.kind === "entry") {
    const entry = entries.get(answer.entry);
    return entry ? <EntryLine entry={entry} /> : <p>{words("entryGone", { entry: answer.entry })}</p>;
  }
  const { mark, maker, period } = answer;
  return (
    <Facts
      facts={[
        [t("mark"), mark],
        [t("maker"), maker],
        [t("period"), wordTypedPeriod(period, periods)],
      ]}
    />
  );
}
