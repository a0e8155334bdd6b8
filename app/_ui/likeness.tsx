import { useFormatter, useTranslations } from "next-intl";
import { LIKENESSES, type Likeness as LikenessWord } from "#core/similarity/likeness";
import styles from "./likeness.module.css";

type LikenessProps = { readonly likeness: LikenessWord | null; readonly similarity: number | null };

/**
 * Likeness in words and as a number, and the word's place between the farthest and the nearest, drawn. An entry
 * without a photograph has none, and that is said.
 */
export function Likeness({ likeness, similarity }: LikenessProps) {
  const t = useTranslations("likeness");
  const format = useFormatter();
  if (likeness === null || similarity === null)
    return (
      <p className={styles.likeness}>
        <span className={styles.word}>{t("noPhotograph")}</span>
      </p>
    );
  const steps = LIKENESSES.length;
  const reached = steps - LIKENESSES.indexOf(likeness);
  const percent = (step: number) => `${(100 * step) / steps}%`;
  return (
    <p className={styles.likeness}>
      <span className={styles.word}>{t(likeness)}</span>{" "}
      <span className={styles.number}>
        {t("number", {
          value: format.number(similarity, { minimumFractionDigits: 2, maximumFractionDigits: 2 }),
        })}
      </span>
      <svg className={styles.rule} width="100%" height="14" aria-hidden="true" focusable="false">
        <rect width={percent(reached)} height="6" fill="var(--verdigris)" />
        <line x2="100%" y1="6.5" y2="6.5" stroke="var(--rule-strong)" />
        {Array.from({ length: steps + 1 }, (_, step) => step).map((step) => (
          <line
            key={step}
            x1={percent(step)}
            x2={percent(step)}
            y1="6"
            y2={step === reached ? 14 : 11}
            stroke={step === reached ? "var(--verdigris)" : "var(--rule-strong)"}
            strokeWidth={step === reached ? 2 : 1}
          />
        ))}
      </svg>
    </p>
  );
}
