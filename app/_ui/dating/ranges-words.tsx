import { useFormatter, useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import styles from "./dating.module.css";
import { wordYears } from "./year-words.ts";

/** The shortest spans of years that hold 95, 80 and 50 in 100, a line each. */
export function RangesWords({ estimate }: { readonly estimate: Estimate }) {
  const t = useTranslations("dating");
  const period = useTranslations("period");
  const format = useFormatter();
  return (
    <ul className={styles.ranges}>
      {([95, 80, 50] as const).map((share) => (
        <li key={share}>
          {t.rich("range", {
            years: format.list(
              estimate.shortest[share].ranges.map(({ from, to }) => wordYears(from, to, period)),
              { type: "disjunction" },
            ),
            share,
            strong: (chunks) => <strong>{chunks}</strong>,
            small: (chunks) => <span className={styles.share}>{chunks}</span>,
          })}
        </li>
      ))}
    </ul>
  );
}
