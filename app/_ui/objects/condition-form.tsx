import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { CONDITIONS, EXTENTS } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, LineField, TextField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";
import { PhotographField } from "./photograph-field.tsx";

type ConditionFormProps = {
  readonly kept: KeptFile;
  readonly state: ItemState;
  readonly isThere: boolean;
  readonly photographId: string;
};

/** What has become of one place of the object, in the controlled words. */
export function ConditionForm({ kept, state, isThere, photographId }: ConditionFormProps) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix: `c-${state.id}-` };
  return (
    <ItemForm
      {...{ kept, state, isThere, photographId }}
      command="condition"
      part="condition"
      about={t("about.condition")}
      shown={["condition", "extent", "place", "note"]}
    >
      <div className={forms.pair}>
        <ChoiceField
          {...common}
          name="condition"
          label={t("fields.condition")}
          choices={[["", t("choose")], ...CONDITIONS.map((each) => [each, t(`conditions.${each}`)] as const)]}
        />
        <ChoiceField
          {...common}
          name="extent"
          label={t("fields.extent")}
          choices={EXTENTS.map((each) => [each, t(`extents.${each}`)] as const)}
        />
        <LineField {...common} name="place" label={t("fields.placeOnObject")} optional />
      </div>
      <TextField {...common} name="note" label={t("fields.note")} rows={3} optional />
      <PhotographField prefix={common.prefix} />
      <button type="submit" className={plain.button}>
        {t("save")}
      </button>
    </ItemForm>
  );
}
