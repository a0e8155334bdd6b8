import Link from "next/link";
import { useTranslations } from "next-intl";
import { whyNoEntry } from "#core/questions/decide";
import type { QuestionView } from "#core/questions/question-view";
import { AnswerAddress } from "../look-up/answer-address.tsx";
import plain from "../plain.module.css";
import { Said } from "../said.tsx";
import styles from "./question.module.css";

type AskersPartProps = {
  readonly view: QuestionView;
  /** The address that lets another browser be the asker's; shown once, when the question was just published. */
  readonly address: string | null;
};

/** What the asker alone is offered: the private address, making an entry, withdrawing. */
export function AskersPart({ view, address }: AskersPartProps) {
  const t = useTranslations("questions");
  const { kept, question } = view;
  return (
    <section className={styles.mine} aria-labelledby="yours">
      <h2 id="yours">{t("yours")}</h2>
      {address && (
        <div className={styles.private}>
          <Said>{t("privateAddress")}</Said>
          <p>
            <AnswerAddress path={address} />
          </p>
        </div>
      )}
      {whyNoEntry(question) === null && (
        <>
          <p>{t("enterNote")}</p>
          <p>
            <Link href={`/questions/${kept.id}/entry`} className={plain.button}>
              {t("enter")}
            </Link>
          </p>
        </>
      )}
      <details className={styles.decline}>
        <summary className={plain.quiet}>{t("withdraw")}</summary>
        <form method="post" action={`/api/questions/${kept.id}/withdraw`}>
          <p>{question.entry === null ? t("withdrawSure") : t("withdrawSureEntry")}</p>
          <button type="submit" className={plain.button}>
            {t("withdrawYes")}
          </button>
        </form>
      </details>
    </section>
  );
}
