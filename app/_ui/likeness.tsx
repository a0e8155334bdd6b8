import { useTranslations } from "next-intl";
import { LIKENESSES, type Likeness as LikenessWord } from "#core/similarity/likeness";
import styles from "./likeness.module.css";

/**
 * Likeness in words, and the word's place between the farthest and the nearest, drawn. The number behind it is shown
 * only with what it means, since a cosine of 0.82 reads as 82 % to everyone. An entry without a photograph has no
 * likeness, and that is said.
 */
export function Likeness({ likeness }: { readonly likeness: LikenessWord | null }) {
  const t = useTranslations("likeness");
  if (likeness === null)
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
      <span className={styles.word}>{t(likeness)}</span>
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
