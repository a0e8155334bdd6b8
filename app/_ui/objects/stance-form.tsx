import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import type { Stance } from "#core/object-files/object-file";
import { typedItem } from "#core/object-files/typed-item";
import { WEIGHTS } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, LineField } from "../questions/form-field.tsx";
import { ItemForm } from "./item-form.tsx";
import { More } from "./more.tsx";

type StanceFormProps = {
  readonly kept: KeptFile;
  readonly anomaly: string;
  readonly explanation: string;
  /** The explanation in words. */
  readonly about: string;
  readonly stance: Stance | null;
  readonly id: string;
};

/** What the examiner thinks of one explanation. */
export function StanceForm({ kept, anomaly, explanation, about, stance, id }: StanceFormProps) {
  const t = useTranslations("objectPages");
  const state = { typed: stance ? typedItem(stance) : {}, errors: [], id, given: false };
  const prefix = `s-${id}-`;
  return (
    <More words={t("finding.weigh")}>
      <ItemForm
        {...{ kept, state }}
        isThere={stance !== null}
        command="stance"
        part="finding"
        about={about}
        shown={["weight", "reason"]}
      >
        <input type="hidden" name="anomaly" value={anomaly} />
        <input type="hidden" name="explanation" value={explanation} />
        <div className={forms.pair}>
          <ChoiceField
            form={state}
            prefix={prefix}
            name="weight"
            label={t("fields.weight")}
            choices={WEIGHTS.map((each) => [each, t(`weights.${each}`)] as const)}
          />
          <LineField form={state} prefix={prefix} name="reason" label={t("fields.reason")} optional />
        </div>
        <button type="submit" className={plain.button}>
          {t("save")}
        </button>
      </ItemForm>
    </More>
  );
}
