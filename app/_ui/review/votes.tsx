import Link from "next/link";
import { useTranslations } from "next-intl";
import type { Interest } from "#core/members/member";
import type { WeighedVote } from "#core/review/tally";
import type { Vote } from "#core/review/vote";
import type { Offer } from "#core/review/what-is-offered";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { type FormState, TextField } from "../questions/form-field.tsx";
import { ChoiceSign } from "./choice-sign.tsx";
import styles from "./review.module.css";
import { When } from "./when.tsx";

type VotesProps = {
  readonly slug: string;
  readonly revision: string;
  readonly votes: readonly WeighedVote[];
  readonly form: FormState;
  /** Whether an answer is offered, by the voter's id. */
  readonly answer: (voter: string) => Offer;
};

/** Every vote, with its reason and its basis; one that does not count says by which rule. */
export function Votes({ votes, ...rest }: VotesProps) {
  const t = useTranslations("review");
  return (
    <section aria-labelledby="votes" className={styles.votes}>
      <h2 id="votes">{t("votesHeading", { count: votes.length })}</h2>
      {votes.length === 0 && <p>{t("noVotes")}</p>}
      <ol>
        {votes.map((weighed) => (
          <li key={weighed.vote.voter.id} className={styles.vote}>
            <OneVote weighed={weighed} {...rest} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function OneVote({
  weighed: { vote, notCounted, earlier, answers },
  answer,
  ...rest
}: Omit<VotesProps, "votes"> & { readonly weighed: WeighedVote }) {
  const t = useTranslations("review");
  const { voter } = vote;
  return (
    <article aria-labelledby={`voter-${voter.id}`}>
      <h3 id={`voter-${voter.id}`} className={styles.voter}>
        <ChoiceSign choice={vote.choice} /> <Link href={`/members/${voter.id}`}>{voter.name}</Link>
      </h3>
      <VoteWords vote={vote} />
      {voter.interests.length > 0 && (
        <p className={plain.note}>
          {t("declared")}{" "}
          {voter.interests.map((interest, i) => (
            <span key={`${interest.in.kind} ${interest.in.slug}`}>
              {i > 0 && "; "}
              <InterestWords interest={interest} />
            </span>
          ))}
        </p>
      )}
      {notCounted && <p className={styles.notCounted}>{t(`notCountedRule.${notCounted}`)}</p>}
      {answers.map(({ by, name, text, at }) => (
        <div key={`${by} ${at}`} className={styles.answer}>
          <p className={plain.note}>
            {t.rich("answeredBy", {
              name: () => <Link href={`/members/${by}`}>{name}</Link>,
              when: () => <When at={at} />,
            })}
          </p>
          <p className={styles.quote}>{text}</p>
        </div>
      ))}
      {earlier.length > 0 && (
        <details className={styles.policy}>
          <summary>{t("earlier", { count: earlier.length })}</summary>
          {earlier.map((each) => (
            <div key={each.at} className={styles.answer}>
              <ChoiceSign choice={each.choice} />
              <VoteWords vote={each} />
            </div>
          ))}
        </details>
      )}
      {vote.choice === "oppose" && answer(voter.id) === null && <AnswerForm voter={voter.id} {...rest} />}
    </article>
  );
}

function VoteWords({ vote }: { readonly vote: Vote }) {
  const t = useTranslations("review");
  const bases = useTranslations("bases");
  return (
    <>
      <p className={styles.quote}>{vote.reason}</p>
      <p className={plain.note}>
        {t.rich("votedOn", { basis: bases(vote.basis), when: () => <When at={vote.at} /> })}
      </p>
    </>
  );
}

function InterestWords({ interest }: { readonly interest: Interest }) {
  const t = useTranslations("review");
  const { kind, slug } = interest.in;
  const href = kind === "maker" ? `/makers/${slug}` : `/entries/${slug}`;
  return t.rich("interest", {
    stake: t(`stakes.${interest.stake}`),
    in: () => <Link href={href}>{slug}</Link>,
    note: interest.note === "" ? "no" : interest.note,
  });
}

function AnswerForm({
  slug,
  revision,
  voter,
  form,
}: {
  readonly slug: string;
  readonly revision: string;
  readonly voter: string;
  readonly form: FormState;
}) {
  const t = useTranslations("review");
  const mine = form.typed.did === "answer" && form.typed.voter === voter;
  return (
    <details className={styles.more} open={mine}>
      <summary className={plain.quiet}>{t("answer")}</summary>
      <form method="post" action={`/api/entries/${slug}/answer`} className={forms.form}>
        <input type="hidden" name="revision" value={revision} />
        <input type="hidden" name="voter" value={voter} />
        <input type="hidden" name="page" value={`/entries/${slug}/review`} />
        <input type="hidden" name="done" value={`/entries/${slug}/review`} />
        <TextField
          form={mine ? form : NOTHING}
          name="answer"
          prefix={`${voter}-`}
          rows={3}
          note={t("answerNote")}
        />
        <button type="submit" className={plain.button}>
          {t("answerSend")}
        </button>
      </form>
    </details>
  );
}

const NOTHING: FormState = { typed: {}, errors: [] };
