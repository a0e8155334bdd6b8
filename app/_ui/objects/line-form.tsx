import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { CONVENTIONS } from "#core/sizes/line";
import { UNITS } from "#core/sizes/read-size-form";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, LineField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";

/** The product that the object is compared with, as a catalogue gives it. */
export function LineForm({ kept, state }: { readonly kept: KeptFile; readonly state: ItemState }) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix: "line-" };
  return (
    <ItemForm
      {...{ kept, state }}
      isThere={kept.content.line !== null}
      command="line"
      part="measure"
      about={t("about.line")}
      shown={["name", "when", "sizes", "unit", "catalogue", "source"]}
    >
      <div className={forms.pair}>
        <LineField {...common} name="name" label={t("fields.lineName")} />
        <LineField {...common} name="when" label={t("fields.made")} note={t("fields.madeNote")} optional />
        <LineField {...common} name="sizes" label={t("fields.sizes")} note={t("fields.sizesNote")} />
        <ChoiceField
          {...common}
          name="unit"
          label={t("fields.unit")}
          choices={UNITS.map((unit) => [unit, unit] as const)}
        />
        <ChoiceField
          {...common}
          name="catalogue"
          label={t("fields.convention")}
          choices={[
            ["", t("notKnown")],
            ...CONVENTIONS.map((each) => [each, t(`measured.${each}`)] as const),
          ]}
        />
        <LineField {...common} name="source" label={t("fields.source")} optional />
      </div>
      <button type="submit" className={plain.button}>
        {t("save")}
      </button>
    </ItemForm>
  );
}
