import { useTranslations } from "next-intl";
import { may } from "#core/permissions";
import { LENGTHS } from "#core/review/refuse";
import { offersAppeal, offersAppealVote } from "#core/review/what-is-offered";
import plain from "../plain.module.css";
import { ChoiceField, TextField } from "../questions/form-field.tsx";
import styles from "./challenge.module.css";
import { ChallengeActForm } from "./challenge-act-form.tsx";
import type { ChallengeShown } from "./decision.tsx";
import { Who } from "./happened.tsx";
import { When } from "./when.tsx";
import { WhyNot } from "./why-not.tsx";

const CHOICES = ["let stand", "overturn"] as const;

/** The one appeal against a decision, the votes of other moderators on it, and what is offered to whoever looks. */
export function Appeal(shown: ChallengeShown) {
  const t = useTranslations("challenge");
  const { history, challenge, by, at, slug } = shown;
  const { appeal } = challenge;
  const page = `/entries/${slug}/challenges/${challenge.id}`;
  if (!appeal)
    return (
      <section aria-labelledby="appeal">
        <h2 id="appeal">{t("appeal")}</h2>
        <p>{t("appealRule")}</p>
        {offersAppeal(history, challenge, by, at) === null && <AppealForm {...shown} />}
      </section>
    );
  const why = offersAppealVote(history, challenge, by, at);
  return (
    <section aria-labelledby="appeal">
      <h2 id="appeal">{t("appeal")}</h2>
      <p className={styles.ruling}>{t(`outcome.${appeal.outcome ?? "open"}`)}</p>
      <p className={styles.quote}>{appeal.reason}</p>
      <p className={plain.note}>
        {t.rich("appealedBy", { who: () => <Who by={appeal.by} />, when: () => <When at={appeal.at} /> })}
      </p>
      <ol className={styles.votes}>
        {appeal.votes.map((vote) => (
          <li key={vote.by.id}>
            <p>
              {t.rich(`appealVotes.${vote.choice}`, {
                who: () => <Who by={vote.by} />,
                when: () => <When at={vote.at} />,
              })}
            </p>
            <p className={styles.quote}>{vote.reason}</p>
          </li>
        ))}
      </ol>
      {appeal.outcome === null &&
        (why === null ? (
          <AppealVoteForm {...shown} />
        ) : (
          may(by, "vote on an appeal") && <WhyNot what={t("cannotVote")} why={why} page={page} />
        ))}
    </section>
  );
}

function AppealForm(shown: ChallengeShown) {
  const t = useTranslations("challenge");
  const note = t("atLeast", { shortest: LENGTHS.appeal });
  return (
    <ChallengeActForm {...shown} act="appeal" send={t("appealSend")}>
      {(form) => <TextField form={form} name="reason" note={note} prefix="appeal-" />}
    </ChallengeActForm>
  );
}

function AppealVoteForm(shown: ChallengeShown) {
  const t = useTranslations("challenge");
  const choices = CHOICES.map((choice) => [choice, t(`appealChoices.${choice}`)] as const);
  const note = t("atLeast", { shortest: LENGTHS.appealVote });
  return (
    <ChallengeActForm {...shown} act="appeal-vote" send={t("appealVoteSend")}>
      {(form) => (
        <>
          <ChoiceField form={form} name="choice" choices={[["", t("choose")], ...choices]} />
          <TextField form={form} name="reason" note={note} prefix="appeal-vote-" />
        </>
      )}
    </ChallengeActForm>
  );
}
