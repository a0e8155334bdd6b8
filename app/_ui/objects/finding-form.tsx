import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { RUNGS } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, LineField, TextField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";

const SHOWN = ["rung", "maker", "says", "own_date", "own_date_reasons", "size", "doubts"];

/** The finding: how sure, of whom, when, which size, and what stays open. */
export function FindingForm({ kept, state }: { readonly kept: KeptFile; readonly state: ItemState }) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix: "f-" };
  const sizes = kept.content.line?.sizes ?? [];
  return (
    <ItemForm
      {...{ kept, state }}
      isThere={kept.content.finding !== null}
      command="finding"
      part="finding"
      about={t("about.finding")}
      shown={SHOWN}
    >
      <div className={forms.pair}>
        <ChoiceField
          {...common}
          name="rung"
          label={t("fields.rung")}
          choices={[["", t("choose")], ...RUNGS.map((each) => [each, t(`rungs.${each}`)] as const)]}
        />
        <LineField {...common} name="maker" label={t("fields.maker")} note={t("fields.makerNote")} optional />
      </div>
      <TextField {...common} name="says" label={t("fields.says")} optional />
      <div className={forms.pair}>
        <LineField
          {...common}
          name="own_date"
          label={t("fields.ownDate")}
          note={t("finding.takes")}
          optional
        />
        <LineField {...common} name="own_date_reasons" label={t("fields.ownReasons")} optional />
        {sizes.length > 0 && (
          <ChoiceField
            {...common}
            name="size"
            label={t("fields.size")}
            choices={[["", t("finding.sizeNone")], ...sizes.map(({ name }) => [name, name] as const)]}
          />
        )}
      </div>
      <TextField {...common} name="doubts" label={t("fields.doubts")} rows={3} optional />
      <button type="submit" className={plain.button}>
        {t("finding.state")}
      </button>
    </ItemForm>
  );
}
