import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { FIELDS } from "#core/entries/vocabulary";
import { may } from "#core/permissions";
import type { UnderReview } from "#core/review/review-lists";
import { WaitingList } from "#ui/review/waiting-list";
import { WhyNot } from "#ui/review/why-not";
import { actor, underReview, waitingForMe } from "#web/reading-desk";
import plain from "../../_ui/plain.module.css";
import styles from "../../_ui/review/desk.module.css";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("reviewDesk"))("title") };
}

/** The review desk: what waits for one's vote, by field and age, and everything else that is under review. */
export default async function ReviewDeskPage() {
  const [by, mine, all, t] = await Promise.all([
    actor(),
    waitingForMe(),
    underReview(),
    getTranslations("reviewDesk"),
  ]);
  const votes = may(by, "vote");
  const others = all.filter(({ slug }) => !mine.some((each) => each.slug === slug));
  return (
    <div className={styles.desk}>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        {votes ? (
          <p className={plain.lede}>{mine.length === 0 ? t("nothing") : t("lede")}</p>
        ) : (
          <WhyNot
            what={t("readersOnly")}
            why={{
              field: "member",
              rule: by.kind === "reader" ? "sign-in-first" : "role-needed",
              received: "",
            }}
            page="/review"
          />
        )}
      </header>
      {byField(mine).map(([field, waiting]) => (
        <WaitingList key={field ?? ""} field={field} waiting={waiting} level="mine" />
      ))}
      {others.length > 0 && (
        <section aria-labelledby="others" className={styles.others}>
          <h2 id="others">{votes ? t("others") : t("all")}</h2>
          {byField(others).map(([field, waiting]) => (
            <WaitingList key={field ?? ""} field={field} waiting={waiting} level="others" />
          ))}
        </section>
      )}
      {all.length === 0 && <p>{t("none")}</p>}
    </div>
  );
}

/** Fields in their order, each with what waits in it, the longest waiting first. */
function byField(waiting: readonly UnderReview[]) {
  return [...FIELDS, null]
    .map((field) => [field, waiting.filter((each) => each.field === field)] as const)
    .filter(([, each]) => each.length > 0);
}
