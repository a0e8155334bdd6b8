import { useFormatter, useTranslations } from "next-intl";
import type { Proposal } from "#core/questions/question";
import type { QuestionView } from "#core/questions/question-view";
import plain from "../plain.module.css";
import { AnswerWords } from "./answer-words.tsx";
import forms from "./form.module.css";
import { type FormState, TextField } from "./form-field.tsx";
import styles from "./question.module.css";

type ProposalsProps = { readonly view: QuestionView; readonly form: FormState };

/** What others take the mark for: the accepted answer first, then those that wait, then those declined. */
export function Proposals({ view, form }: ProposalsProps) {
  const t = useTranslations("questions");
  const { proposals } = view.question;
  if (proposals.length === 0) return <p>{t("noProposals")}</p>;
  const order = { accepted: 0, waiting: 1, declined: 2 };
  const sorted = [...proposals].sort(
    (a, b) => order[a.standing.is] - order[b.standing.is] || a.number - b.number,
  );
  return (
    <ol className={styles.proposals}>
      {sorted.map((proposal) => (
        <li key={proposal.number} id={`proposal-${proposal.number}`}>
          <OneProposal proposal={proposal} view={view} form={form} />
        </li>
      ))}
    </ol>
  );
}

function OneProposal({ proposal, view, form }: ProposalsProps & { readonly proposal: Proposal }) {
  const t = useTranslations("questions");
  const bases = useTranslations("bases");
  const format = useFormatter();
  const { number, standing } = proposal;
  return (
    <article
      className={styles.proposal}
      data-standing={standing.is}
      aria-labelledby={`proposal-title-${number}`}
    >
      <h3 id={`proposal-title-${number}`} className={styles.standing}>
        {t(`standing.${standing.is}`, { number })}
      </h3>
      <AnswerWords answer={proposal.answer} entries={view.entries} />
      <p className={styles.said}>{proposal.reasons}</p>
      <p className={plain.note}>
        {t("proposedBy", {
          name: proposal.name,
          basis: bases(proposal.basis),
          day: format.dateTime(new Date(proposal.at), { dateStyle: "long" }),
        })}
      </p>
      {standing.is === "declined" && (
        <p className={styles.said}>{t("declinedBecause", { reason: standing.reason })}</p>
      )}
      {view.mine && <Judging proposal={proposal} id={view.kept.id} form={form} />}
    </article>
  );
}

type JudgingProps = { readonly proposal: Proposal; readonly id: string; readonly form: FormState };

/** What the asker may do with a proposal. */
function Judging({ proposal, id, form }: JudgingProps) {
  const t = useTranslations("questions");
  const { number, standing } = proposal;
  const action = (act: string) => `/api/questions/${id}/${act}`;
  const given = <input type="hidden" name="proposal" value={number} />;
  const refused = form.typed.act === "decline" && form.typed.proposal === String(number);
  return (
    <div className={styles.judging}>
      {standing.is === "accepted" ? (
        <form method="post" action={action("take-back")}>
          {given}
          <button type="submit" className={plain.quiet}>
            {t("takeBack")}
          </button>
        </form>
      ) : (
        <form method="post" action={action("accept")}>
          {given}
          <button
            type="submit"
            className={standing.is === "waiting" ? plain.button : plain.quiet}
            aria-describedby={`proposal-title-${number}`}
          >
            {t("accept")}
          </button>
        </form>
      )}
      {standing.is !== "declined" && (
        <details className={styles.decline} open={refused}>
          <summary className={plain.quiet}>{t("decline")}</summary>
          <form method="post" action={action("decline")} className={forms.form}>
            {given}
            <TextField
              form={refused ? form : NOTHING}
              name="reason"
              prefix={`decline-${number}-`}
              rows={3}
              note={t("declineNote")}
            />
            <button type="submit" className={plain.button}>
              {t("declineYes")}
            </button>
          </form>
        </details>
      )}
    </div>
  );
}

const NOTHING: FormState = { typed: {}, errors: [] };
