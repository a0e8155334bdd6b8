import { useTranslations } from "next-intl";
import { percentOf, SURE_FROM, SURENESSES, surenessOf } from "#core/similarity/sureness";
import styles from "./likeness.module.css";

/**
 * How sure it is that an entry is the mark: the word and the number, and the number's place between 0 and 1, drawn,
 * with a tick where each word begins. Where nothing is claimed there is no word.
 */
export function Sureness({ probability }: { readonly probability: number }) {
  const t = useTranslations("sureness");
  const word = surenessOf(probability);
  const percent = percentOf(probability);
  return (
    <p className={styles.likeness}>
      <span className={word ? styles.word : styles.plain}>{t(word ?? "unclaimed")}</span>{" "}
      <span className={styles.percent}>{t("percent", { percent })}</span>
      <svg className={styles.rule} width="100%" height="14" aria-hidden="true" focusable="false">
        <rect width={`${percent}%`} height="6" fill="var(--verdigris)" />
        <line x2="100%" y1="6.5" y2="6.5" stroke="var(--rule-strong)" />
        {[0, ...SURENESSES.map((each) => SURE_FROM[each]), 1].map((from) => (
          <line
            key={from}
            x1={`${100 * from}%`}
            x2={`${100 * from}%`}
            y1="6"
            y2="12"
            stroke="var(--rule-strong)"
          />
        ))}
      </svg>
    </p>
  );
}
