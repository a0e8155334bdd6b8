import Link from "next/link";
import { useTranslations } from "next-intl";
import type { EntrySummary } from "#core/entries/entry";
import { PROPOSAL_FIELDS } from "#core/questions/parse-proposal";
import { BASES } from "#core/questions/question";
import { EntryLine } from "../entry-line.tsx";
import plain from "../plain.module.css";
import styles from "./form.module.css";
import { ChoiceField, type FormState, LineField, OtherErrors, TextField } from "./form-field.tsx";

type ProposeFormProps = {
  readonly id: string;
  readonly form: FormState;
  /** The entry that is proposed; null when the mark is said in words. */
  readonly entry: EntrySummary | null;
};

/** A proposal: which mark it is, why, on what that rests, and who says so. */
export function ProposeForm({ id, form, entry }: ProposeFormProps) {
  const t = useTranslations("questionForm");
  const bases = useTranslations("bases");
  const shown = entry ? PROPOSAL_FIELDS.filter((name) => name !== "entry") : PROPOSAL_FIELDS;
  return (
    <form method="post" action={`/api/questions/${id}/propose`} className={styles.form}>
      <OtherErrors form={form} shown={shown} />
      {entry ? (
        <div className={styles.chosen}>
          <input type="hidden" name="entry" value={entry.slug} />
          <EntryLine entry={entry} />
          <p>
            <Link href={`/questions/${id}/propose`}>{t("chooseAnother")}</Link>
          </p>
        </div>
      ) : (
        <>
          <LineField form={form} name="mark" note={t("markNote")} />
          <div className={styles.pair}>
            <LineField form={form} name="maker" optional />
            <LineField form={form} name="period" optional note={t("periodNote")} />
          </div>
        </>
      )}
      <TextField form={form} name="reasons" note={t("reasonsNote")} />
      <div className={styles.pair}>
        <ChoiceField
          form={form}
          name="basis"
          choices={[["", t("choose")], ...BASES.map((basis) => [basis, bases(basis)] as const)]}
        />
        <LineField form={form} name="name" note={t("nameNote")} />
      </div>
      <button type="submit" className={plain.button}>
        {t("propose")}
      </button>
    </form>
  );
}
