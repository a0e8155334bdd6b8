import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { Draft } from "#core/drafts/draft";
import type { EntrySummary } from "#core/entries/entry";
import { imageAtLeast } from "../image-address.ts";
import plain from "../plain.module.css";
import { StateSign } from "../state-sign.tsx";
import styles from "./contribute.module.css";

type DraftLineProps = { readonly draft: Draft; readonly entry: EntrySummary | null };

/** One draft or submission of a member: its first photograph, what it is of, and where it stands. */
export function DraftLine({ draft, entry }: DraftLineProps) {
  const t = useTranslations("contribute");
  const format = useFormatter();
  const [photograph] = draft.photographs;
  const { submitted } = draft;
  const title = (draft.typed.title ?? "").trim() || t("untitled");
  const href = submitted
    ? `/entries/${submitted.slug}/revisions/${submitted.number}`
    : `/contribute/${draft.id}`;
  const when = format.dateTime(draft.updatedAt, { dateStyle: "medium", timeStyle: "short" });
  return (
    <article className={styles.line}>
      <Link href={href} className={styles.lineMat} tabIndex={-1} aria-hidden="true">
        {photograph && (
          <img
            src={imageAtLeast(photograph, 320)}
            width={photograph.width}
            height={photograph.height}
            alt=""
          />
        )}
      </Link>
      <div className={styles.lineWords}>
        <h3>
          <Link href={href}>{title}</Link>
        </h3>
        <p>
          {draft.entry === null ? t("newEntry") : t("ofEntry", { title: entry?.title ?? draft.entry })}
          {submitted && `, ${t("revisionSent", { number: submitted.number })}`}
        </p>
        {submitted && entry && (
          <p>
            <StateSign state={entry.state} />
          </p>
        )}
        <p className={plain.note}>
          {t("changed", { when })}, {t("photographCount", { count: draft.photographs.length })}
        </p>
        {!submitted && (
          <form method="post" action={`/api/drafts/${draft.id}/discard`}>
            <button type="submit" className={plain.link} aria-label={t("discardTitle", { title })}>
              {t("discard")}
            </button>
          </form>
        )}
      </div>
    </article>
  );
}
