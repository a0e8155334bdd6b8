import { useTranslations } from "next-intl";
import type { FieldError } from "#core/field-error";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import type { Asked } from "./asked.tsx";
import styles from "./browse.module.css";

type BrowseFormProps = { readonly asked: Asked; readonly errors: readonly FieldError[] };

/** Words and period to look for; what is already chosen below stays chosen. A plain form. */
export function BrowseForm({ asked, errors }: BrowseFormProps) {
  const t = useTranslations("browse");
  const ofPeriod = errors.find((error) => error.field === "period");
  const others = errors.filter((error) => error !== ofPeriod);
  return (
    <search>
      <form action="/entries" className={styles.form}>
        {others.map((error) => (
          <FieldErrorNote key={error.field} error={error} />
        ))}
        <div className={plain.field}>
          <label htmlFor="words">{t("words")}</label>
          <input className={plain.input} id="words" name="words" type="search" defaultValue={asked.words} />
          <p className={plain.note}>{t("wordsNote")}</p>
        </div>
        <div className={plain.field}>
          <label htmlFor="period">{t("period")}</label>
          <input
            className={plain.input}
            id="period"
            name="period"
            defaultValue={asked.period}
            aria-invalid={ofPeriod ? true : undefined}
            aria-describedby={ofPeriod ? "period-error period-note" : "period-note"}
          />
          {ofPeriod && <FieldErrorNote error={ofPeriod} id="period-error" />}
          <p className={plain.note} id="period-note">
            {t("periodNote")}
          </p>
        </div>
        {(["kind", "technique", "material", "maker"] as const).map(
          (name) => asked[name] !== "" && <input key={name} type="hidden" name={name} value={asked[name]} />,
        )}
        <button type="submit" className={plain.button}>
          {t("search")}
        </button>
      </form>
    </search>
  );
}
