import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { LineField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";
import { PhotographField } from "./photograph-field.tsx";

/** A photograph of the object as a whole. */
export function PhotographForm({ kept, state }: { readonly kept: KeptFile; readonly state: ItemState }) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix: "p-" };
  return (
    <ItemForm
      {...{ kept, state }}
      isThere={false}
      command="photograph"
      part="overview"
      about={t("about.photograph")}
      shown={["shows", "credit"]}
    >
      <PhotographField prefix="p-" />
      <div className={forms.pair}>
        <LineField {...common} name="shows" label={t("overview.shows")} optional />
        <LineField {...common} name="credit" label={t("overview.creditField")} optional />
      </div>
      <button type="submit" className={plain.button}>
        {t("overview.addPhotograph")}
      </button>
    </ItemForm>
  );
}
