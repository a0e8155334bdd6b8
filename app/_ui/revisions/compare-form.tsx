import { useTranslations } from "next-intl";
import plain from "../plain.module.css";
import styles from "./revisions.module.css";

type CompareFormProps = {
  readonly slug: string;
  readonly numbers: readonly number[];
  readonly from: number;
  readonly to: number;
};

/** Chooses two revisions to be compared. */
export function CompareForm({ slug, numbers, from, to }: CompareFormProps) {
  const t = useTranslations("revisions");
  return (
    <form action={`/entries/${slug}/difference`} className={styles.choose} aria-label={t("compare")}>
      {(
        [
          ["from", t("fromLabel"), from],
          ["to", t("toLabel"), to],
        ] as const
      ).map(([name, label, value]) => (
        <div key={name} className={plain.field}>
          <label htmlFor={`compare-${name}`}>{label}</label>
          <select id={`compare-${name}`} name={name} className={plain.input} defaultValue={value}>
            {numbers.map((number) => (
              <option key={number} value={number}>
                {t("number", { number })}
              </option>
            ))}
          </select>
        </div>
      ))}
      <button type="submit" className={plain.quiet}>
        {t("compareGo")}
      </button>
    </form>
  );
}
