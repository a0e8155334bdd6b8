import Link from "next/link";
import { useTranslations } from "next-intl";
import type { Challenge } from "#core/review/entry-history";
import { Who } from "./happened.tsx";
import styles from "./trail.module.css";
import { When } from "./when.tsx";

type ChallengesWaitingProps = {
  readonly waiting: readonly {
    readonly slug: string;
    readonly title: string;
    readonly challenge: Challenge;
  }[];
};

/** Challenges and appeals that nobody has decided yet. */
export function ChallengesWaiting({ waiting }: ChallengesWaitingProps) {
  const t = useTranslations("moderation");
  const claims = useTranslations("challenge.claims");
  return (
    <section aria-labelledby="waiting">
      <h2 id="waiting">{t("waiting", { count: waiting.length })}</h2>
      {waiting.length === 0 && <p>{t("nothingWaits")}</p>}
      <ol className={styles.story}>
        {waiting.map(({ slug, title, challenge: { id, at, by, claim, decision } }) => (
          <li key={id}>
            <span className={styles.when}>
              <When at={at} />
            </span>
            <p className={styles.happened}>
              <Link href={`/entries/${slug}/challenges/${id}`}>{title}</Link>
              <span>
                {t.rich(decision ? "appeal" : "challenge", {
                  claim: claims(claim),
                  who: () => <Who by={by} />,
                })}
              </span>
            </p>
          </li>
        ))}
      </ol>
    </section>
  );
}
