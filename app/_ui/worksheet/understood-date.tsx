import { useTranslations } from "next-intl";
import { CIRCA_POLICY } from "#core/dates/circa-policy";
import { readDate } from "#core/dates/read-date";
import { PeriodWords } from "../period-words.tsx";
import plain from "../plain.module.css";
import { wordEdtf } from "../word-edtf.ts";
import styles from "./worksheet.module.css";

/** How a date is understood while it is typed, in words and in EDTF; and what else it may mean. */
export function UnderstoodDate({ typed }: { readonly typed: string }) {
  const t = useTranslations("worksheet");
  const period = useTranslations("period");
  const read = typed.trim() === "" ? null : readDate(typed);
  const date = read?.ok ? read.value : null;
  return (
    <div role="status" className={styles.understood}>
      {date && (
        <p>
          {t.rich("understood", {
            words: () => (
              <strong>
                <PeriodWords period={date.interval} />
              </strong>
            ),
            edtf: date.interval.edtf,
          })}
        </p>
      )}
      {date?.orElse && <p>{t("orElse", { words: wordEdtf(date.orElse, period), edtf: date.orElse })}</p>}
      {date && (date.interval.start.approximate || date.interval.end.approximate) && (
        <p className={plain.note}>
          {t("cautionAbout", {
            year: CIRCA_POLICY.about.year,
            decade: CIRCA_POLICY.about.decade,
            century: CIRCA_POLICY.about.century,
          })}
        </p>
      )}
    </div>
  );
}
