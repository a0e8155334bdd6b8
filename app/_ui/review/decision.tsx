import Link from "next/link";
import { useTranslations } from "next-intl";
import type { Actor } from "#core/members/member";
import { may } from "#core/permissions";
import { madeFrom } from "#core/review/authorship";
import { RULINGS } from "#core/review/entry-event";
import type { Challenge, EntryHistory } from "#core/review/entry-history";
import { LENGTHS } from "#core/review/refuse";
import { offersDecision } from "#core/review/what-is-offered";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, type FormState, LineField, TextField } from "../questions/form-field.tsx";
import styles from "./challenge.module.css";
import { Who } from "./happened.tsx";
import { When } from "./when.tsx";
import { WhyNot } from "./why-not.tsx";

export type ChallengeShown = {
  readonly slug: string;
  readonly history: EntryHistory;
  readonly challenge: Challenge;
  readonly by: Actor;
  readonly at: string;
  readonly form: FormState;
};

const CONSEQUENCES = ["no change", "new revision to review", "superseded", "withdrawn"] as const;

/** The decision with its reason; until there is one, the form for it, or why it is not for whoever looks. */
export function Decision(shown: ChallengeShown) {
  const t = useTranslations("challenge");
  const { slug, history, challenge, by, at } = shown;
  const { decision } = challenge;
  const why = decision ? null : offersDecision(history, challenge, by, at);
  return (
    <section aria-labelledby="decision">
      <h2 id="decision">{t("decision")}</h2>
      {decision ? (
        <Decided decision={decision} />
      ) : why === null ? (
        <DecisionForm {...shown} />
      ) : (
        <>
          <p>{t("waits")}</p>
          {may(by, "decide a challenge") && (
            <WhyNot what={t("cannotDecide")} why={why} page={`/entries/${slug}/challenges/${challenge.id}`} />
          )}
        </>
      )}
    </section>
  );
}

function Decided({ decision }: { readonly decision: NonNullable<Challenge["decision"]> }) {
  const t = useTranslations("challenge");
  const trail = useTranslations("trail");
  const { ruling, reason, consequence, by, at } = decision;
  return (
    <>
      <p className={styles.ruling}>{t(`rulings.${ruling}`)}</p>
      <p className={styles.quote}>{reason}</p>
      <p>
        {trail(`consequence.${consequence.kind}`)}{" "}
        {consequence.kind === "superseded" && (
          <Link href={`/entries/${consequence.entry}`}>{consequence.entry}</Link>
        )}
      </p>
      <p className={plain.note}>
        {t.rich("decidedBy", { who: () => <Who by={by} />, when: () => <When at={at} /> })}
      </p>
    </>
  );
}

function DecisionForm({ slug, history, challenge, form }: ChallengeShown) {
  const t = useTranslations("challenge");
  const page = `/entries/${slug}/challenges/${challenge.id}`;
  const mine = form.typed.did === "decide" ? form : { typed: {}, errors: [] };
  const revisions = history.revisions.filter(({ id }) => madeFrom(history, id, challenge.revision));
  return (
    <form method="post" action={`/api/entries/${slug}/decide`} className={forms.form}>
      <input type="hidden" name="challenge" value={challenge.id} />
      <input type="hidden" name="page" value={page} />
      <input type="hidden" name="done" value={page} />
      <ChoiceField
        form={mine}
        name="ruling"
        choices={[["", t("choose")], ...RULINGS.map((ruling) => [ruling, t(`rulings.${ruling}`)] as const)]}
      />
      <ChoiceField
        form={mine}
        name="consequence"
        choices={[
          ["", t("choose")],
          ...CONSEQUENCES.map((each) => [each, t(`consequences.${each}`)] as const),
        ]}
      />
      <div className={forms.pair}>
        <ChoiceField
          form={mine}
          name="revision"
          label={t("toReview")}
          choices={revisions.map(({ id, number }) => [id, t("revisionNumber", { number })] as const)}
        />
        <LineField form={mine} name="into" optional note={t("intoNote")} />
      </div>
      <TextField
        form={mine}
        name="reason"
        rows={6}
        note={t("decisionNote", { shortest: LENGTHS.decision })}
      />
      <button type="submit" className={plain.button}>
        {t("decide")}
      </button>
    </form>
  );
}
