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
import { ChallengeActForm } from "./challenge-act-form.tsx";
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

function DecisionForm(shown: ChallengeShown) {
  const t = useTranslations("challenge");
  const { history, challenge } = shown;
  const revisions = history.revisions.filter(({ id }) => madeFrom(history, id, challenge.revision));
  const rulings = RULINGS.map((ruling) => [ruling, t(`rulings.${ruling}`)] as const);
  const consequences = CONSEQUENCES.map((each) => [each, t(`consequences.${each}`)] as const);
  return (
    <ChallengeActForm {...shown} act="decide" send={t("decide")}>
      {(form) => (
        <>
          <ChoiceField form={form} name="ruling" choices={[["", t("choose")], ...rulings]} />
          <ChoiceField form={form} name="consequence" choices={[["", t("choose")], ...consequences]} />
          <div className={forms.pair}>
            <ChoiceField
              form={form}
              name="revision"
              label={t("toReview")}
              note={t("toReviewNote")}
              choices={revisions.map(({ id, number }) => [id, t("revisionNumber", { number })] as const)}
            />
            <LineField form={form} name="into" optional note={t("intoNote")} />
          </div>
          <TextField
            form={form}
            name="reason"
            rows={6}
            note={t("decisionNote", { shortest: LENGTHS.decision })}
          />
        </>
      )}
    </ChallengeActForm>
  );
}
