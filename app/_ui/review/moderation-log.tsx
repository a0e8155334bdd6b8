import Link from "next/link";
import { useTranslations } from "next-intl";
import { type EntryLink, MODERATION } from "#core/review/review-lists";
import { Who } from "./happened.tsx";
import styles from "./trail.module.css";
import { When } from "./when.tsx";

/** Every act of moderation, the latest first: who did what to which entry or member, and why. */
export function ModerationLog({ links }: { readonly links: readonly EntryLink[] }) {
  const t = useTranslations("moderation");
  if (links.length === 0) return <p>{t("emptyLog")}</p>;
  return (
    <ol className={styles.story}>
      {links.map(({ link, entry }) => {
        const type = MODERATION.find((each) => each === link.type);
        const { member, reason } = link.payload as {
          readonly member?: { readonly id: string; readonly name: string };
          readonly reason?: string;
        };
        return (
          <li key={link.hash}>
            <span className={styles.when}>
              <When at={link.at} />
            </span>
            <div className={styles.happened}>
              <p>
                {type ? t.rich(`acts.${type}`, { who: () => <Who by={link.by} /> }) : link.type}{" "}
                {entry && <Link href={`/entries/${entry.slug}/trail`}>{entry.title}</Link>}
                {member && <Link href={`/members/${member.id}`}>{member.name}</Link>}
              </p>
              {reason && <p className={styles.words}>{reason}</p>}
            </div>
          </li>
        );
      })}
    </ol>
  );
}
