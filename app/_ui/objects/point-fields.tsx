import { useTranslations } from "next-intl";
import type { FieldError } from "#core/field-error";
import { OBSERVED, type Observed } from "#core/object-files/vocabulary";
import type { Typed } from "#core/questions/typed-text";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import type { ExamPoint } from "./exam-point.ts";
import { ObjectPhoto } from "./object-photo.tsx";
import styles from "./objects.module.css";
import { PhotographField } from "./photograph-field.tsx";

type PointFieldsProps = {
  readonly point: ExamPoint;
  /** What was typed into the form when it was refused. */
  readonly typed: Typed | null;
  /** What was answered since the page was opened. */
  readonly said: Observed | null;
  /** What is wrong with what was seen. */
  readonly wrong: FieldError | null;
};

/** What one answers at a point: whether it was seen, what was seen, and a photograph of it. */
export function PointFields({ point, typed, said, wrong }: PointFieldsProps) {
  const t = useTranslations("objectPages.examine");
  const observed = typed?.observed ?? said ?? point.observed ?? "";
  const option = typed?.option ?? point.option;
  return (
    <>
      <fieldset className={styles.answers}>
        <legend className={plain.label}>{t("question")}</legend>
        {OBSERVED.map((each) => (
          <label key={each}>
            <input type="radio" name="observed" value={each} required defaultChecked={observed === each} />
            {t(`observed.${each}`)}
          </label>
        ))}
      </fieldset>
      {point.options.length > 0 && (
        <div className={plain.field}>
          <label htmlFor="option">{t("option")}</label>
          <select id="option" name="option" className={plain.input} defaultValue={option}>
            <option value="">{t("noOption")}</option>
            {point.options.map(({ id, says }) => (
              <option key={id} value={id}>
                {says}
              </option>
            ))}
          </select>
        </div>
      )}
      <div className={plain.field}>
        <label htmlFor="value">{t("value")}</label>
        <input
          id="value"
          name="value"
          className={plain.input}
          autoComplete="off"
          aria-invalid={wrong ? true : undefined}
          aria-describedby={wrong ? "value-error" : undefined}
          defaultValue={typed?.value ?? point.value}
        />
        {wrong && <FieldErrorNote error={wrong} id="value-error" />}
      </div>
      {point.photographs.length > 0 && (
        <div className={styles.photographs}>
          {point.photographs.map((image) => (
            <div key={image.sha256} className={styles.mat}>
              <ObjectPhoto image={image} alt={point.lookFor} />
            </div>
          ))}
        </div>
      )}
      <PhotographField prefix="point-" />
      <details className={styles.more} open={(typed?.note ?? point.note) !== ""}>
        <summary>{t("note")}</summary>
        <div className={plain.field}>
          <label htmlFor="note" className={plain.hidden}>
            {t("note")}
          </label>
          <textarea
            id="note"
            name="note"
            rows={3}
            className={plain.input}
            defaultValue={typed?.note ?? point.note}
          />
        </div>
      </details>
    </>
  );
}
