import Link from "next/link";
import { useTranslations } from "next-intl";
import type { EntryLink } from "#core/review/review-lists";
import type { Choice } from "#core/review/vote";
import plain from "../plain.module.css";
import styles from "./members.module.css";
import { DayWords } from "./standing-words.tsx";

type DeedsProps = { readonly links: readonly EntryLink[] };

/** What a member wrote, the latest first. */
export function Contributions({ links }: DeedsProps) {
  const t = useTranslations("members");
  return (
    <section className={styles.section} aria-labelledby="contributions">
      <h2 id="contributions">{t("contributions")}</h2>
      {links.length === 0 ? (
        <p>{t("noContributions")}</p>
      ) : (
        <ul className={styles.lines}>
          {links.map((each) => {
            const { revision } = each.link.payload as { readonly revision: { readonly number: number } };
            return (
              <Deed key={each.link.hash} of={each} to={`/revisions/${revision.number}`}>
                {t("revision", { number: revision.number })}
              </Deed>
            );
          })}
        </ul>
      )}
    </section>
  );
}

/** How a member voted, the latest first. */
export function VotesCast({ links }: DeedsProps) {
  const t = useTranslations();
  return (
    <section className={styles.section} aria-labelledby="votes">
      <h2 id="votes">{t("members.votes")}</h2>
      {links.length === 0 ? (
        <p>{t("members.noVotes")}</p>
      ) : (
        <ul className={styles.lines}>
          {links.map((each) => {
            const { choice, reason } = each.link.payload as {
              readonly choice: Choice;
              readonly reason: string;
            };
            return (
              <Deed key={each.link.hash} of={each} to="">
                {t(`choices.${choice}`)}: {reason}
              </Deed>
            );
          })}
        </ul>
      )}
    </section>
  );
}

type DeedProps = {
  readonly of: EntryLink;
  /** What follows the entry's address. */
  readonly to: string;
  readonly children: React.ReactNode;
};

function Deed({ of: { link, entry }, to, children }: DeedProps) {
  return (
    <li>
      <div>
        {entry && <Link href={`/entries/${entry.slug}${to}`}>{entry.title}</Link>}
        <span className={plain.note}>{children}</span>
      </div>
      <span className={plain.note}>
        <DayWords at={link.at} />
      </span>
    </li>
  );
}
