import { useTranslations } from "next-intl";
import type { Actor } from "#core/members/member";
import type { EntryHistory, Review } from "#core/review/entry-history";
import { whyItWouldNotCount } from "#core/review/weigh-votes";
import { offersVote, offersWithdrawal } from "#core/review/what-is-offered";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { type FormState, TextField } from "../questions/form-field.tsx";
import styles from "./review.module.css";
import { VoteForm } from "./vote-form.tsx";
import { WhyNot } from "./why-not.tsx";

type YourPartProps = {
  readonly shown: {
    readonly slug: string;
    readonly history: EntryHistory;
    readonly review: Review;
    readonly by: Actor;
    readonly at: string;
  };
  readonly form: FormState;
};

/** What whoever looks may do in a review, or why not. */
export function YourPart({ shown, form }: YourPartProps) {
  const t = useTranslations("review");
  const { slug, history, review, by, at } = shown;
  const noVote = offersVote(history, review, by, at);
  const me = by.kind === "member" ? by.id : null;
  const standing = review.votes.findLast(({ voter }) => voter.id === me) ?? null;
  const uncounted = by.kind === "member" ? whyItWouldNotCount(history, review, by) : null;
  return (
    <section aria-labelledby="your-vote" className={styles.yours}>
      <h2 id="your-vote">{standing ? t("yourVoteStands") : t("yourVote")}</h2>
      {noVote ? (
        <WhyNot what={t("noVote")} why={noVote} page={`/entries/${slug}/review`} />
      ) : (
        <>
          {uncounted && <p className={styles.notCounted}>{t(`wouldNotCount.${uncounted}`)}</p>}
          <VoteForm
            slug={slug}
            revision={review.revision}
            form={form}
            standing={standing}
            shortest={review.policy.reason}
          />
        </>
      )}
      {review.end === null && offersWithdrawal(history, review, by, at) === null && (
        <Withdrawal slug={slug} revision={review.revision} form={form} />
      )}
    </section>
  );
}

function Withdrawal({
  slug,
  revision,
  form,
}: {
  readonly slug: string;
  readonly revision: string;
  readonly form: FormState;
}) {
  const t = useTranslations("review");
  const mine = form.typed.did === "withdraw";
  const page = `/entries/${slug}/review`;
  return (
    <details className={styles.more} open={mine}>
      <summary className={plain.quiet}>{t("withdraw")}</summary>
      <form method="post" action={`/api/entries/${slug}/withdraw`} className={forms.form}>
        <p>{t("withdrawNote")}</p>
        <input type="hidden" name="revision" value={revision} />
        <input type="hidden" name="page" value={page} />
        <input type="hidden" name="done" value={page} />
        <TextField
          form={mine ? form : { typed: {}, errors: [] }}
          name="reason"
          prefix="withdraw-"
          rows={3}
          optional
        />
        <button type="submit" className={plain.button}>
          {t("withdrawYes")}
        </button>
      </form>
    </details>
  );
}
