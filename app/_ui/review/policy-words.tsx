import { useTranslations } from "next-intl";
import type { ReviewPolicy } from "#core/review/policy";
import { lengthOf } from "./hours.ts";
import styles from "./review.module.css";

/** The rules by which a review goes, in words. */
export function PolicyWords({ policy }: { readonly policy: ReviewPolicy }) {
  const t = useTranslations("review");
  const { votes, support, days, daysFrom, hours, reason } = policy;
  const open = t("length", lengthOf(hours));
  return (
    <details className={styles.policy}>
      <summary>{t("policyHeading")}</summary>
      <ul className={styles.rules}>
        <li>{t("policy.votes", { votes })}</li>
        <li>{t("policy.support", support)}</li>
        <li>{t("policy.open", { open })}</li>
        <li>{t("policy.answers")}</li>
        <li>{t("policy.content")}</li>
        <li>{t("policy.counts")}</li>
        <li>{t(daysFrom === "first vote" ? "policy.endsFromVote" : "policy.ends", { days })}</li>
        <li>{t("policy.reason", { reason })}</li>
      </ul>
    </details>
  );
}
