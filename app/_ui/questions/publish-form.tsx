import { useTranslations } from "next-intl";
import { PUBLICATION_FIELDS } from "#core/questions/parse-publication";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import styles from "./form.module.css";
import { type FormState, focused, LineField, OtherErrors, TextField } from "./form-field.tsx";

/** Licences that let a photograph be shown and reused; another may be typed. */
const LICENCES = ["CC BY 4.0", "CC BY-SA 4.0", "CC0 1.0"];

/** What a look-up needs to be published: the question, the terms of its photographs, and that it was meant. */
export function PublishForm({ lookUp, form }: { readonly lookUp: string; readonly form: FormState }) {
  const t = useTranslations("questionForm");
  const confirmed = form.errors.find(({ field }) => field === "confirmed");
  return (
    <form method="post" action={`/api/look-ups/${lookUp}/publish`} className={styles.form}>
      <OtherErrors form={form} shown={PUBLICATION_FIELDS} />
      <LineField form={form} name="title" note={t("titleNote")} />
      <TextField form={form} name="about" note={t("aboutNote")} rows={7} />
      <LineField form={form} name="name" note={t("nameNote")} />
      <fieldset className={styles.group}>
        <legend>{t("terms")}</legend>
        <div className={styles.pair}>
          <LineField form={form} name="licence" note={t("licenceNote")} list="licences" />
          <LineField form={form} name="credit" note={t("creditNote")} />
        </div>
        <datalist id="licences">
          {LICENCES.map((licence) => (
            <option key={licence} value={licence} />
          ))}
        </datalist>
      </fieldset>
      <div className={styles.public}>
        <p>{t("becomesPublic")}</p>
        <ul>
          <li>{t("publicPhotographs")}</li>
          <li>{t("publicWords")}</li>
        </ul>
        <p>{t("publicLater")}</p>
        <label className={styles.check} htmlFor="confirmed">
          <input
            type="checkbox"
            id="confirmed"
            name="confirmed"
            value="yes"
            defaultChecked={form.typed.confirmed === "yes"}
            aria-invalid={confirmed ? true : undefined}
            aria-describedby={confirmed ? "confirmed-error" : undefined}
            {...focused(confirmed !== undefined && form.errors[0] === confirmed)}
          />
          <span>{t("confirm")}</span>
        </label>
        {confirmed && <FieldErrorNote error={confirmed} id="confirmed-error" />}
      </div>
      <button type="submit" className={plain.button}>
        {t("publish")}
      </button>
    </form>
  );
}
