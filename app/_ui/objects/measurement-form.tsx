import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { BASES_MEASURED, MEASURED } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, LineField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";

type MeasurementFormProps = { readonly kept: KeptFile; readonly state: ItemState; readonly isThere: boolean };

/** What every measurement says besides its number. */
export function MeasuredFields({ state, prefix }: { readonly state: ItemState; readonly prefix: string }) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix };
  return (
    <div className={forms.pair}>
      <ChoiceField
        {...common}
        name="measured"
        label={t("fields.measured")}
        choices={[["", t("choose")], ...MEASURED.map((each) => [each, t(`measured.${each}`)] as const)]}
      />
      <ChoiceField
        {...common}
        name="base"
        label={t("fields.base")}
        choices={BASES_MEASURED.map((each) => [each, t(`bases.${each}`)] as const)}
      />
      <LineField {...common} name="part" label={t("fields.part")} note={t("fields.partNote")} optional />
    </div>
  );
}

/** A measurement as it was taken with a rule or a balance. */
export function MeasurementForm({ kept, state, isThere }: MeasurementFormProps) {
  const t = useTranslations("objectPages");
  const prefix = `m-${state.id}-`;
  return (
    <ItemForm
      {...{ kept, state, isThere }}
      command="measurement"
      part="measure"
      about={t("about.measurement")}
      shown={["measured", "base", "part", "amount", "within", "note"]}
    >
      <MeasuredFields state={state} prefix={prefix} />
      <div className={forms.pair}>
        <LineField
          form={state}
          prefix={prefix}
          name="amount"
          label={t("fields.amount")}
          note={t("fields.amountNote")}
        />
        <LineField
          form={state}
          prefix={prefix}
          name="within"
          label={t("fields.within")}
          note={t("fields.withinNote")}
          optional
        />
      </div>
      <LineField form={state} prefix={prefix} name="note" label={t("fields.note")} optional />
      <button type="submit" className={plain.button}>
        {t("save")}
      </button>
    </ItemForm>
  );
}
