import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import { reasonsOf } from "#core/dating/reasons";
import { periodsOf } from "#core/dating/window";
import type { FileEvidence } from "#core/object-files/evidence";
import type { ObjectFile } from "#core/object-files/object-file";
import { wordPeriod } from "../period-words.tsx";
import plain from "../plain.module.css";
import { useEvidenceName } from "./evidence-part.tsx";
import { useMeasureWords } from "./measurement-list.tsx";
import styles from "./objects.module.css";

type WhyProps = {
  readonly content: ObjectFile;
  readonly estimate: Estimate;
  readonly evidence: readonly FileEvidence[];
  /** Address of the file's pages; empty where only one is shown. */
  readonly base: string;
};

/** What the finding rests on: the marks, then what else dates it, what tells most first, then measures and points. */
export function Why({ content, estimate, evidence, base }: WhyProps) {
  const t = useTranslations("objectPages.overview");
  const words = useTranslations("objectPages");
  const measure = useMeasureWords();
  const dated = useDated(estimate, evidence);
  const { marks, measurements, observations } = content;
  const looked = observations.filter(({ observed }) => observed !== "not examined").length;
  const isOfMark = (id: string) => evidence.some((each) => each.id === id && each.item.list === "marks");
  const ofMark = (mark: string) =>
    dated.find(({ id }) => evidence.some((each) => each.id === id && each.item.id === mark));
  return (
    <ul className={styles.points}>
      {marks.map(({ id, words: says, place, match }) => (
        <li key={id}>
          {t("mark", { name: says || words("aMark"), place: place || "none", match: match?.title ?? "none" })}
          {ofMark(id) && <span className={plain.note}> {ofMark(id)?.note}</span>}
        </li>
      ))}
      {dated
        .filter(({ id }) => !isOfMark(id))
        .map(({ id, says, note }) => (
          <li key={id}>
            {says} <span className={plain.note}>{note}</span>
          </li>
        ))}
      {measurements.length > 0 && <li>{measurements.map(measure).join("; ")}</li>}
      <li>
        {base === "" ? (
          t("observations", { count: looked })
        ) : (
          <Link href={`${base}/examine`}>{t("observations", { count: looked })}</Link>
        )}
      </li>
    </ul>
  );
}

/** The dated pieces in words, what tells most first: what it is, its years, and how much it tells. */
function useDated(estimate: Estimate, evidence: readonly FileEvidence[]) {
  const dating = useTranslations("dating");
  const period = useTranslations("period");
  const format = useFormatter();
  const name = useEvidenceName();
  return reasonsOf(estimate, evidence).flatMap(({ evidenceId, strength }) => {
    const piece = evidence.find(({ id }) => id === evidenceId);
    if (!piece) return [];
    const years = format.list(
      periodsOf(piece).map((each) => wordPeriod(each, period)),
      { type: "disjunction" },
    );
    return [{ id: evidenceId, says: name(piece), note: `${years}. ${dating(`strength.${strength}`)}.` }];
  });
}
