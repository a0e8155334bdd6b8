import { useTranslations } from "next-intl";
import { KINDS, TECHNIQUES } from "#core/entries/vocabulary";
import type { KeptFile } from "#core/object-files/kept-file";
import { BELONGINGS } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, LineField, TextField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";
import { PhotographField } from "./photograph-field.tsx";

type MarkFormProps = {
  readonly kept: KeptFile;
  readonly state: ItemState;
  readonly isThere: boolean;
  readonly photographId: string;
};

const SHOWN = ["kind", "technique", "place", "words", "description", "belongs"];

/** A mark, a label or a construction detail as it is found on the object, with its photograph. */
export function MarkForm({ kept, state, isThere, photographId }: MarkFormProps) {
  const t = useTranslations("objectPages");
  const all = useTranslations();
  const common = { form: state, prefix: `k-${state.id}-` };
  return (
    <ItemForm
      {...{ kept, state, isThere, photographId }}
      command="mark"
      part="marks"
      about={t("about.mark")}
      shown={SHOWN}
    >
      <PhotographField prefix={common.prefix} />
      <div className={forms.pair}>
        <ChoiceField
          {...common}
          name="kind"
          label={t("fields.kind")}
          choices={KINDS.map((each) => [each, all(`kinds.${each}`)] as const)}
        />
        <ChoiceField
          {...common}
          name="technique"
          label={t("fields.technique")}
          choices={[
            ["", t("notKnown")],
            ...TECHNIQUES.map((each) => [each, all(`techniques.${each}`)] as const),
          ]}
        />
        <LineField {...common} name="place" label={t("fields.placeOnObject")} />
        <LineField {...common} name="words" label={t("fields.words")} note={t("fields.wordsNote")} optional />
        <ChoiceField
          {...common}
          name="belongs"
          label={t("fields.belongs")}
          choices={BELONGINGS.map((each) => [each, t(`belongings.${each}`)] as const)}
        />
      </div>
      <TextField {...common} name="description" label={t("fields.description")} rows={3} optional />
      <button type="submit" className={plain.button}>
        {t("save")}
      </button>
    </ItemForm>
  );
}
