import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import type { Stance } from "#core/object-files/object-file";
import { typedItem } from "#core/object-files/typed-item";
import { WEIGHTS } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, LineField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState, type RefusedItem } from "./item-form.tsx";
import { More } from "./more.tsx";

type StanceFormProps = {
  readonly kept: KeptFile;
  readonly anomaly: string;
  readonly explanation: string;
  /** Where it stands on the page. */
  readonly anchor: string;
  /** The explanation in words. */
  readonly about: string;
  readonly stance: Stance | null;
  readonly id: string;
  readonly refused: RefusedItem;
};

/** What the examiner thinks of one explanation. */
export function StanceForm(props: StanceFormProps) {
  const t = useTranslations("objectPages");
  const { kept, anomaly, explanation, anchor, about, stance } = props;
  const state = stateOfStance(props);
  const prefix = `s-${state.id}-`;
  return (
    <More words={t("finding.weigh")} isOpen={state.given}>
      <ItemForm
        {...{ kept, state }}
        isThere={stance !== null}
        command="stance"
        anchor={anchor}
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

/** A stance is known by what it weighs: its form gets another id whenever the page is made. */
function stateOfStance({ anomaly, explanation, stance, id, refused }: StanceFormProps): ItemState {
  const typed = refused?.typed ?? {};
  const mine = typed.did === "stance" && typed.anomaly === anomaly && typed.explanation === explanation;
  return mine && refused
    ? { ...refused, id: typed.id || id, given: true }
    : { typed: stance ? typedItem(stance) : {}, errors: [], id, given: false };
}
