import { useTranslations } from "next-intl";
import type { MakerSummary } from "#core/entries/maker";
import { KINDS, MAKER_KINDS, MAKER_PARTS, TECHNIQUES } from "#core/entries/vocabulary";
import { ENTRY_FIELDS, type EntryToMake } from "#core/questions/parse-entry";
import plain from "../plain.module.css";
import { EntryUnderstood } from "./entry-understood.tsx";
import styles from "./form.module.css";
import { ChoiceField, type FormState, LineField, OtherErrors, TextField } from "./form-field.tsx";

type EntryFormProps = {
  readonly id: string;
  readonly form: FormState;
  readonly makers: readonly MakerSummary[];
  readonly materials: readonly string[];
  /** How the form was understood, once it has been looked over. */
  readonly understood: EntryToMake | null;
};

/** An entry made of a question: everything the question says, to be corrected and completed. */
export function EntryForm({ id, form, makers, materials, understood }: EntryFormProps) {
  const t = useTranslations("questionForm");
  const words = useTranslations();
  const none = ["", t("notKnown")] as const;
  const makerName = makers.find(({ slug }) => slug === understood?.content.maker)?.name ?? null;
  return (
    <form method="post" action={`/api/questions/${id}/enter`} className={styles.form}>
      <OtherErrors form={form} shown={ENTRY_FIELDS} />
      {understood && (
        <>
          <EntryUnderstood entry={understood} maker={makerName} />
          <input type="hidden" name="understood" value={understood.content.period ?? ""} />
        </>
      )}
      <fieldset className={styles.group}>
        <legend>{t("what")}</legend>
        <LineField form={form} name="title" note={t("entryTitleNote")} />
        <TextField form={form} name="description" note={t("descriptionNote")} rows={7} />
        <div className={styles.pair}>
          <ChoiceField
            form={form}
            name="kind"
            choices={[["", t("choose")], ...KINDS.map((each) => [each, words(`kinds.${each}`)] as const)]}
          />
          <ChoiceField
            form={form}
            name="technique"
            choices={[none, ...TECHNIQUES.map((each) => [each, words(`techniques.${each}`)] as const)]}
          />
          <LineField form={form} name="material" optional list="materials" />
          <LineField form={form} name="place_on_object" optional />
          <LineField form={form} name="words" optional note={t("wordsNote")} />
          <LineField form={form} name="emblem" optional />
          <LineField form={form} name="size_mm" optional note={t("sizeNote")} />
        </div>
        <datalist id="materials">
          {materials.map((material) => (
            <option key={material} value={material} />
          ))}
        </datalist>
      </fieldset>
      <fieldset className={styles.group}>
        <legend>{t("whose")}</legend>
        <div className={styles.pair}>
          <ChoiceField
            form={form}
            name="maker"
            choices={[none, ...makers.map(({ slug, name }) => [slug, name] as const)]}
          />
          <ChoiceField
            form={form}
            name="maker_part"
            choices={[none, ...MAKER_PARTS.map((each) => [each, t(`parts.${each}`)] as const)]}
          />
        </div>
        <p className={plain.note}>{t("newMakerNote")}</p>
        <div className={styles.pair}>
          <LineField form={form} name="new_maker" optional />
          <ChoiceField
            form={form}
            name="new_maker_kind"
            choices={[none, ...MAKER_KINDS.map((each) => [each, words(`makers.kinds.${each}`)] as const)]}
          />
          <LineField form={form} name="new_maker_place" optional />
        </div>
      </fieldset>
      <fieldset className={styles.group}>
        <legend>{t("when")}</legend>
        <LineField form={form} name="period" optional note={t("edtfNote")} />
        <TextField form={form} name="period_from_reason" optional rows={2} />
        <TextField form={form} name="period_to_reason" optional rows={2} />
      </fieldset>
      <fieldset className={styles.group}>
        <legend>{t("evidence")}</legend>
        <TextField form={form} name="distinguish" optional rows={3} />
        <TextField form={form} name="sources" optional rows={3} note={t("sourcesNote")} />
      </fieldset>
      <fieldset className={styles.group}>
        <legend>{t("photographs")}</legend>
        <LineField form={form} name="shows" optional note={t("showsNote")} />
        <div className={styles.pair}>
          <LineField form={form} name="licence" />
          <LineField form={form} name="credit" />
        </div>
      </fieldset>
      {understood ? (
        <button type="submit" className={plain.button}>
          {t("make")}
        </button>
      ) : (
        <button type="submit" className={plain.button}>
          {t("lookOver")}
        </button>
      )}
    </form>
  );
}
