import { useTranslations } from "next-intl";
import { SIGNS } from "#core/decoding/label-wording";
import { FieldErrorNote } from "../field-error.tsx";
import { TextField } from "../questions/form-field.tsx";
import { tickedIn } from "./asked.ts";
import styles from "./decoder-form.module.css";
import { type FormProps, formState } from "./decoder-form.tsx";

/** The text of a label as it stands, and signs that can't be typed. */
export function WordingForm(props: FormProps) {
  const t = useTranslations("decoders");
  const ticked = tickedIn(props.input, "signs");
  return (
    <>
      <TextField form={formState(props, ["wording"])} name="wording" rows={6} note={t("wordingNote")} />
      <fieldset className={styles.group}>
        <legend>{t("signsLegend")}</legend>
        {SIGNS.map(({ id, sign }) => (
          <label key={id} className={styles.tick}>
            <input type="checkbox" name="signs" value={id} defaultChecked={ticked.includes(id)} />
            <span>{sign}</span>
          </label>
        ))}
        {props.error?.field === "signs" && <FieldErrorNote error={props.error} />}
      </fieldset>
    </>
  );
}
