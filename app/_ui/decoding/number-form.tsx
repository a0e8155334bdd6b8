import { useTranslations } from "next-intl";
import type { DecoderName } from "#core/decoding/decoders";
import { DESIGN_MARKINGS } from "#core/decoding/registered-design";
import { FieldErrorNote } from "../field-error.tsx";
import { LineField } from "../questions/form-field.tsx";
import { typedIn } from "./asked.ts";
import styles from "./decoder-form.module.css";
import { type FormProps, formState } from "./decoder-form.tsx";

/** A number as it stands on the object. */
export function NumberForm({ name, ...props }: FormProps & { readonly name: DecoderName }) {
  const t = useTranslations("decoders");
  const form = formState(props, ["number"]);
  return (
    <>
      <LineField form={form} name="number" note={t("numberNote", { example: t(`examples.${name}`) })} />
      {name === "registered-designs" && <Marking {...props} />}
    </>
  );
}

function Marking({ input, error }: FormProps) {
  const t = useTranslations("decoders");
  const chosen = typedIn(input, "marking") || "rd";
  return (
    <fieldset className={styles.group}>
      <legend>{t("markingLegend")}</legend>
      {DESIGN_MARKINGS.map((marking) => (
        <label key={marking} className={styles.tick}>
          <input type="radio" name="marking" value={marking} defaultChecked={chosen === marking} />
          <span>{t(`markings.${marking}`)}</span>
        </label>
      ))}
      {error?.field === "marking" && <FieldErrorNote error={error} />}
    </fieldset>
  );
}
