import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { DOCUMENTS } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, LineField, TextField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";
import { PhotographField } from "./photograph-field.tsx";

type DocumentFormProps = {
  readonly kept: KeptFile;
  readonly state: ItemState;
  readonly isThere: boolean;
  readonly photographId: string;
};

const SHOWN = ["kind", "title", "when", "transcription", "vouched_by", "kept_at"];

/** A letter, snapshot, receipt or the like: its scan, its transcription, its date, and who vouches for it. */
export function DocumentForm({ kept, state, isThere, photographId }: DocumentFormProps) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix: `d-${state.id}-` };
  return (
    <ItemForm
      {...{ kept, state, isThere, photographId }}
      command="document"
      part="provenance"
      about={t("about.document")}
      shown={SHOWN}
    >
      <div className={forms.pair}>
        <ChoiceField
          {...common}
          name="kind"
          label={t("fields.documentKind")}
          choices={[["", t("choose")], ...DOCUMENTS.map((each) => [each, t(`documents.${each}`)] as const)]}
        />
        <LineField {...common} name="title" label={t("fields.documentTitle")} />
        <LineField
          {...common}
          name="when"
          label={t("fields.documentDate")}
          note={t("fields.dateNote")}
          optional
        />
        <LineField {...common} name="vouched_by" label={t("fields.vouchedBy")} optional />
        <LineField {...common} name="kept_at" label={t("fields.keptAt")} optional />
      </div>
      <TextField
        {...common}
        name="transcription"
        label={t("fields.transcription")}
        note={t("fields.transcriptionNote")}
        rows={8}
        optional
      />
      <PhotographField prefix={common.prefix} />
      <button type="submit" className={plain.button}>
        {t("save")}
      </button>
    </ItemForm>
  );
}
