"use client";

import { useTranslations } from "next-intl";
import type { ChangeEvent } from "react";
import { MOST_PHOTOGRAPHS } from "#core/look-ups/asked-photographs";
import { LIMITS } from "../field-error.tsx";
import plain from "../plain.module.css";
import styles from "./bench.module.css";
import { ACCEPT } from "./check-file.ts";

type ChooseFormProps = {
  /** By which fields outside the form belong to it. */
  readonly id: string;
  readonly onFiles?: (files: readonly File[]) => void;
};

/** The empty bench. A plain form that works by itself; with scripts chosen files are laid on the bench first. */
export function ChooseForm({ id, onFiles }: ChooseFormProps) {
  const t = useTranslations("bench");

  function changed(event: ChangeEvent<HTMLInputElement>) {
    const files = [...(event.target.files ?? [])];
    if (files.length > 0) onFiles?.(files);
    // The same file can be chosen again after it was refused.
    event.target.value = "";
  }

  return (
    <form id={id} className={styles.empty} action="/api/look-ups" method="post" encType="multipart/form-data">
      <div className={styles.corners} aria-hidden="true" />
      <div className={styles.ways}>
        <p className={styles.plainWords}>{t("plainSame")}</p>
        <span className={styles.file}>
          <input
            id="photograph"
            type="file"
            name="photograph"
            accept={ACCEPT}
            multiple
            required
            onChange={changed}
          />
          <label htmlFor="photograph" className={plain.button}>
            {t("choose")}
          </label>
        </span>
        <span className={`${styles.file} ${styles.camera}`}>
          <input id="camera" type="file" accept={ACCEPT} capture="environment" onChange={changed} />
          <label htmlFor="camera" className={plain.quiet}>
            {t("take")}
          </label>
        </span>
        <label className={styles.plainOther}>
          <span>{t("plainOther")}</span>
          <span className={styles.file}>
            <input type="file" name="other_photograph" accept={ACCEPT} multiple />
          </span>
        </label>
        <button type="submit" className={`${plain.button} ${styles.plainSend}`}>
          {t("lookUp")}
        </button>
        <p className={styles.dropWords}>{t("drop")}</p>
      </div>
      <p className={plain.note}>{t("limits", { ...LIMITS, most: MOST_PHOTOGRAPHS })}</p>
    </form>
  );
}
