import { useFormatter, useTranslations } from "next-intl";
import type { Likeness as LikenessWord } from "#core/similarity/likeness";
import styles from "./likeness.module.css";

type LikenessProps = { readonly likeness: LikenessWord; readonly similarity: number };

/** Likeness in words and as a number, and where that lies between nothing alike and the same. */
export function Likeness({ likeness, similarity }: LikenessProps) {
  const t = useTranslations("likeness");
  const format = useFormatter();
  const at = `${Math.min(100, Math.max(0, similarity * 100))}%`;
  return (
    <p className={styles.likeness}>
      <span className={styles.word}>{t(likeness)}</span>{" "}
      <span className={styles.number}>
        {t("number", {
          value: format.number(similarity, { minimumFractionDigits: 2, maximumFractionDigits: 2 }),
        })}
      </span>
      <svg className={styles.rule} width="100%" height="16" aria-hidden="true" focusable="false">
        <line x1="0" x2="100%" y1="15.5" y2="15.5" stroke="var(--rule-strong)" />
        {TENTHS.map((tenth) => (
          <line
            key={tenth}
            x1={`${tenth * 10}%`}
            x2={`${tenth * 10}%`}
            y1={tenth % 5 === 0 ? 7 : 11}
            y2="16"
            stroke="var(--rule-strong)"
          />
        ))}
        <rect x="0" y="12" width={at} height="4" fill="var(--verdigris)" />
        <line x1={at} x2={at} y1="2" y2="16" stroke="var(--verdigris)" strokeWidth="3" />
      </svg>
    </p>
  );
}

const TENTHS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
