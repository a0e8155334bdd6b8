import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { FAMILIES } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import { ChoiceField, LineField, TextField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";

/** What the object is called here, its family, and what it is as far as one sees. */
export function DescribeForm({ kept, state }: { readonly kept: KeptFile; readonly state: ItemState }) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix: "o-" };
  return (
    <ItemForm
      {...{ kept, state }}
      isThere
      command="describe"
      part="overview"
      about={t("about.describe")}
      shown={["title", "family", "description"]}
    >
      <LineField {...common} name="title" label={t("fields.title")} />
      <ChoiceField
        {...common}
        name="family"
        label={t("fields.family")}
        choices={FAMILIES.map((each) => [each, t(`families.${each}`)] as const)}
      />
      <TextField {...common} name="description" label={t("fields.description")} optional />
      <button type="submit" className={plain.button}>
        {t("save")}
      </button>
    </ItemForm>
  );
}
