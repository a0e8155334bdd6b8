import Link from "next/link";
import { useTranslations } from "next-intl";
import type { RevisionView } from "#core/entries/revision";
import type { EntryState } from "#core/entries/vocabulary";
import { StateSign } from "../state-sign.tsx";
import styles from "./revisions.module.css";

type RevisionBannerProps = {
  readonly revision: RevisionView;
  readonly slug: string;
  readonly state: EntryState;
  /** Where this host is reached. */
  readonly origin: string;
};

/** Says which revision this is, how it stands, what its author changed and why, and where it is found for ever. */
export function RevisionBanner({ revision, slug, state, origin }: RevisionBannerProps) {
  const t = useTranslations("revisions");
  const { line, shown } = revision;
  const { number, parents } = line;
  const path = `/entries/${slug}`;
  return (
    <aside className={styles.banner} aria-label={t("number", { number })}>
      <p>
        <strong>
          {number === shown ? t("bannerShown", { number }) : t("bannerOther", { number, shown })}
        </strong>{" "}
        <Link href={path}>{t("toEntry")}</Link>
      </p>
      <p className={styles.bannerState}>
        {t("state")}: <StateSign state={state} />
      </p>
      {line.summary !== "" && <p className={styles.quote}>{line.summary}</p>}
      <p className={styles.address}>
        {t("address")}: <code>{`${origin}${path}/revisions/${number}`}</code>
      </p>
      <p className={styles.ways}>
        {parents.map((parent) => (
          <Link key={parent} href={`${path}/difference?from=${parent}&to=${number}`}>
            {t("difference", { number: parent })}
          </Link>
        ))}
        <Link href={`${path}/history`}>{t("all")}</Link>
        <Link href={`${path}/revise?from=${number}`}>{t("restore")}</Link>
      </p>
    </aside>
  );
}
