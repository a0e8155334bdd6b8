import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { LineField, TextField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";

type AnomalyFormProps = {
  readonly kept: KeptFile;
  readonly state: ItemState;
  /** An id for each explanation that the form has room for. */
  readonly ids: readonly string[];
};

/** Something that does not fit, as the examiner sees it, with the explanations that compete. */
export function AnomalyForm({ kept, state, ids }: AnomalyFormProps) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix: "a-" };
  return (
    <ItemForm
      {...{ kept, state }}
      isThere={false}
      command="anomaly"
      part="finding"
      about={t("about.anomaly")}
      shown={["says"]}
    >
      <TextField {...common} name="says" label={t("fields.anomalySays")} rows={3} />
      {ids.map((id, i) => {
        const field = (part: string) => `explanation-${i + 1}-${part}`;
        return (
          <fieldset key={id} className={forms.group}>
            <legend>{t("fields.explanation", { place: i + 1 })}</legend>
            <input type="hidden" name={field("id")} value={state.typed[field("id")] || id} />
            <LineField {...common} name={field("says")} label={t("fields.explanationSays")} optional />
            <div className={forms.pair}>
              <LineField {...common} name={field("for")} label={t("fields.for")} optional />
              <LineField {...common} name={field("against")} label={t("fields.against")} optional />
            </div>
          </fieldset>
        );
      })}
      <button type="submit" className={plain.button}>
        {t("save")}
      </button>
    </ItemForm>
  );
}
