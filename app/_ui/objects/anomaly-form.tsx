import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { MOST } from "#core/object-files/limits";
import type { WrittenAnomaly } from "#core/object-files/object-file";
import type { Typed } from "#core/questions/typed-text";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { LineField, TextField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";

type AnomalyFormProps = {
  readonly kept: KeptFile;
  readonly state: ItemState;
  readonly isThere: boolean;
  readonly newId: () => string;
};

/** Room for explanations that the form has at least, and beyond those that are there. */
const ROOM = 3;
const MORE_ROOM = 2;

/** An anomaly as its form shows it. */
export function typedAnomaly({ says, explanations }: WrittenAnomaly): Typed {
  const fields = explanations.flatMap((each, i) =>
    (["id", "says", "for", "against"] as const).map((part) => [`explanation-${i + 1}-${part}`, each[part]]),
  );
  return { says, ...Object.fromEntries(fields) };
}

/** How many explanations a form has room for: all that are written in it, and some more. */
function roomIn(typed: Typed): number {
  const written = Object.entries(typed)
    .filter(([, text]) => text !== "")
    .map(([name]) => Number(/^explanation-(\d+)-(?!id)/.exec(name)?.[1] ?? 0));
  return Math.min(MOST.explanations, Math.max(ROOM, Math.max(0, ...written) + MORE_ROOM));
}

/** Something that does not fit, as the examiner sees it, with the explanations that compete. */
export function AnomalyForm({ kept, state, isThere, newId }: AnomalyFormProps) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix: `a-${state.id}-` };
  const ids = Array.from({ length: roomIn(state.typed) }, newId);
  return (
    <ItemForm
      {...{ kept, state, isThere }}
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
