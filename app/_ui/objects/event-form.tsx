import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { EVENTS, PASSAGES, QUALIFIERS } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, LineField, TextField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState } from "./item-form.tsx";

type EventFormProps = { readonly kept: KeptFile; readonly state: ItemState; readonly isThere: boolean };

const SHOWN = ["kind", "when", "from", "to", "passage", "qualifier", "place", "told"];

/** One step of the provenance, as told, with the documents behind it. */
export function EventForm({ kept, state, isThere }: EventFormProps) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix: `e-${state.id}-` };
  const behind = (state.typed.documents ?? "").split(" ");
  return (
    <ItemForm
      {...{ kept, state, isThere }}
      command="event"
      part="provenance"
      about={t("about.event")}
      shown={SHOWN}
    >
      <div className={forms.pair}>
        <ChoiceField
          {...common}
          name="kind"
          label={t("fields.event")}
          choices={[["", t("choose")], ...EVENTS.map((each) => [each, t(`events.${each}`)] as const)]}
        />
        <LineField {...common} name="when" label={t("fields.date")} note={t("fields.dateNote")} optional />
        <LineField {...common} name="from" label={t("fields.from")} optional />
        <LineField {...common} name="to" label={t("fields.to")} optional />
        <ChoiceField
          {...common}
          name="passage"
          label={t("fields.passage")}
          choices={PASSAGES.map((each) => [each, t(`passages.${each}`)] as const)}
        />
        <ChoiceField
          {...common}
          name="qualifier"
          label={t("fields.qualifier")}
          choices={QUALIFIERS.map((each) => [each, t(`qualifiers.${each}`)] as const)}
        />
        <LineField {...common} name="place" label={t("fields.place")} optional />
      </div>
      <TextField {...common} name="told" label={t("fields.told")} rows={3} optional />
      <label className={forms.check}>
        <input
          type="checkbox"
          name="gap_before"
          value="on"
          defaultChecked={state.typed.gap_before === "on"}
        />
        {t("fields.gap")}
      </label>
      {kept.content.documents.length > 0 && (
        <fieldset className={forms.group}>
          <legend>{t("fields.documents")}</legend>
          {kept.content.documents.map(({ id, kind, title }) => (
            <label key={id} className={forms.check}>
              <input type="checkbox" name="documents" value={id} defaultChecked={behind.includes(id)} />
              {t(`documents.${kind}`)}: {title}
            </label>
          ))}
        </fieldset>
      )}
      <button type="submit" className={plain.button}>
        {t("save")}
      </button>
    </ItemForm>
  );
}
