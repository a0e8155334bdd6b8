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
      <svg className={styles.rule} width="100%" height="18" aria-hidden="true" focusable="false">
        <rect width={at} height="5" fill="var(--verdigris)" />
        <line x2="100%" y1="5.5" y2="5.5" stroke="var(--rule-strong)" />
        {TENTHS.map((tenth) => (
          <line
            key={tenth}
            x1={`${tenth * 10}%`}
            x2={`${tenth * 10}%`}
            y1="5"
            y2={tenth % 5 === 0 ? 14 : 10}
            stroke="var(--rule-strong)"
          />
        ))}
        <line x1={at} x2={at} y1="0" y2="18" stroke="var(--verdigris)" strokeWidth="2" />
      </svg>
    </p>
  );
}

const TENTHS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
