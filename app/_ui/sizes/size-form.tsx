import { useTranslations } from "next-intl";
import type { FieldError } from "#core/field-error";
import { MAKINGS } from "#core/sizes/allowances";
import { CONVENTIONS } from "#core/sizes/line";
import { type SizeForm as Typed, UNITS } from "#core/sizes/read-size-form";
import plain from "../plain.module.css";
import form from "../questions/form.module.css";
import { ChoiceField, LineField } from "../questions/form-field.tsx";

type SizeFormProps = { readonly typed: Typed; readonly errors: readonly FieldError[] };

/** What the catalogue gives and what was measured: a plain form whose answer has an address. */
export function SizeForm({ typed, errors }: SizeFormProps) {
  const t = useTranslations("sizesPage");
  const fields = { typed, errors };
  const units = UNITS.map((each) => [each, t(`units.${each}`)] as const);
  const catalogue = [
    ["", t("catalogueUnknown")] as const,
    ...CONVENTIONS.map((each) => [each, t(`conventions.${each}`)] as const),
  ];
  const makings = MAKINGS.map((each) => [each, t(`makings.${each}`)] as const);
  return (
    <form action="/dates/sizes" className={form.form}>
      <fieldset className={form.group}>
        <legend>{t("line")}</legend>
        <div className={form.pair}>
          <LineField form={fields} name="sizes" label={t("sizes")} note={t("sizesNote")} />
          <ChoiceField form={fields} name="unit" label={t("unit")} choices={units} />
          <ChoiceField form={fields} name="catalogue" label={t("catalogue")} choices={catalogue} />
          <ChoiceField form={fields} name="making" label={t("making")} choices={makings} />
        </div>
      </fieldset>
      <fieldset className={form.group}>
        <legend>{t("measured")}</legend>
        <p className={plain.note}>{t("measuredNote")}</p>
        <div className={form.pair}>
          {CONVENTIONS.map((each) => (
            <LineField key={each} form={fields} name={each} />
          ))}
        </div>
      </fieldset>
      <button type="submit" className={plain.button}>
        {t("compare")}
      </button>
    </form>
  );
}
