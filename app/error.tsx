"use client";

import { useTranslations } from "next-intl";
import styles from "./_ui/plain.module.css";

type Props = { readonly error: unknown; readonly retry: () => void };

/** Something unexpected: a generic text, and the event id under which the host finds it in the log. */
export default function ErrorPage({ error, retry }: Props) {
  const t = useTranslations("failure");
  const event = error instanceof Error && "digest" in error ? String(error.digest) : null;
  return (
    <div className={styles.message}>
      <h1>{t("heading")}</h1>
      <p>{t("words")}</p>
      {event !== null && <p className={styles.event}>{t("event", { event })}</p>}
      <button type="button" className={styles.button} onClick={() => retry()}>
        {t("retry")}
      </button>
    </div>
  );
}
