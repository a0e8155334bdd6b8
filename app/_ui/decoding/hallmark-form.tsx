import { useTranslations } from "next-intl";
import { isSmall, LETTER_STYLES, OFFICES, OTHER_MARKS, STANDARDS } from "#core/decoding/hallmark-table";
import { FieldErrorNote } from "../field-error.tsx";
import { ChoiceField, LineField } from "../questions/form-field.tsx";
import { tickedIn, typedIn } from "./asked.ts";
import styles from "./decoder-form.module.css";
import { type FormProps, formState } from "./decoder-form.tsx";
import { LetterInStyle } from "./letter-in-style.tsx";

/** What can be read of a hallmark; every field can stay empty. */
export function HallmarkForm(props: FormProps) {
  const t = useTranslations("decoders.hallmarks");
  const form = formState(props, ["office", "letter", "standard"]);
  const offices = OFFICES.map(
    ({ office = "", mark = "" }) => [office, t("officeChoice", { office, mark })] as const,
  );
  const standards = STANDARDS.map(
    ({ id, metal = "", mark = "" }) => [id, t("standardChoice", { metal, mark })] as const,
  );
  const ticked = tickedIn(props.input, "others");
  return (
    <>
      <ChoiceField form={form} name="office" choices={[["", t("anyOffice")], ...offices]} />
      <LineField form={form} name="letter" note={t("letterNote")} />
      <StyleField {...props} />
      <ChoiceField form={form} name="standard" choices={[["", t("noStandard")], ...standards]} />
      <fieldset className={styles.group}>
        <legend>{t("othersLegend")}</legend>
        {OTHER_MARKS.map(({ id, mark }) => (
          <label key={id} className={styles.tick}>
            <input type="checkbox" name="others" value={id} defaultChecked={ticked.includes(id)} />
            <span>{mark}</span>
          </label>
        ))}
        {props.error?.field === "others" && <FieldErrorNote error={props.error} />}
      </fieldset>
    </>
  );
}

function StyleField({ input, error }: FormProps) {
  const t = useTranslations("decoders.hallmarks");
  const chosen = typedIn(input, "style");
  return (
    <fieldset className={styles.group}>
      <legend>{t("styleLegend")}</legend>
      <div className={styles.styles}>
        {["", ...LETTER_STYLES].map((style) => (
          <label key={style} className={styles.style}>
            <input type="radio" name="style" value={style} defaultChecked={chosen === style} />
            {style !== "" && <LetterInStyle letter={isSmall(style) ? "b" : "B"} style={style} />}
            <span>{style === "" ? t("anyStyle") : style}</span>
          </label>
        ))}
      </div>
      {error?.field === "style" && <FieldErrorNote error={error} />}
    </fieldset>
  );
}
