import { useTranslations } from "next-intl";
import { BASES, CHOICES, type Vote } from "#core/review/vote";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, type FormState, focused, OtherErrors, TextField } from "../questions/form-field.tsx";
import { HeldForm } from "./held-form.tsx";
import styles from "./review.module.css";

type VoteFormProps = {
  readonly slug: string;
  readonly revision: string;
  readonly form: FormState;
  /** The vote that stands of whoever looks. */
  readonly standing: Vote | null;
  /** Fewest characters of the reason. */
  readonly shortest: number;
};

/** A vote: for, against or neither; why, and on what that rests. */
export function VoteForm({ slug, revision, form, standing, shortest }: VoteFormProps) {
  const t = useTranslations("review");
  const bases = useTranslations("bases");
  const refused = form.typed.did === "vote";
  const filled = refused ? form : { errors: [], typed: typedAs(standing) };
  const page = `/entries/${slug}/review`;
  const words = { held: t("held"), undo: t("undo"), now: t("sendNow") };
  return (
    <HeldForm action={`/api/entries/${slug}/vote`} className={forms.form} words={words}>
      {refused && <OtherErrors form={form} shown={["choice", "basis", "reason"]} />}
      <input type="hidden" name="revision" value={revision} />
      <input type="hidden" name="page" value={page} />
      <input type="hidden" name="done" value={page} />
      <Choices form={filled} />
      <ChoiceField
        form={filled}
        name="basis"
        choices={BASES.map((basis) => [basis, bases(basis)] as const)}
      />
      <TextField form={filled} name="reason" note={t("reasonNote", { shortest })} />
      <button type="submit" className={plain.button}>
        {standing ? t("changeVote") : t("vote")}
      </button>
    </HeldForm>
  );
}

function Choices({ form }: { readonly form: FormState }) {
  const t = useTranslations("review");
  const error = form.errors.find(({ field }) => field === "choice");
  return (
    <fieldset className={styles.choices} aria-describedby={error ? "choice-error" : undefined}>
      <legend className={plain.label}>{t("choice")}</legend>
      {CHOICES.map((choice, i) => (
        <label key={choice}>
          <input
            type="radio"
            name="choice"
            value={choice}
            required
            defaultChecked={form.typed.choice === choice}
            {...focused(i === 0 && error !== undefined && form.errors[0] === error)}
          />
          {t(`choose.${choice}`)}
        </label>
      ))}
      {error && <FieldErrorNote error={error} id="choice-error" />}
    </fieldset>
  );
}

const typedAs = (vote: Vote | null): FormState["typed"] =>
  vote ? { choice: vote.choice, basis: vote.basis, reason: vote.reason } : {};
