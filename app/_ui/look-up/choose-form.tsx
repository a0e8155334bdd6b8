"use client";

import { useTranslations } from "next-intl";
import type { ChangeEvent } from "react";
import { LIMITS } from "../field-error.tsx";
import plain from "../plain.module.css";
import styles from "./bench.module.css";
import { ACCEPT } from "./check-file.ts";

type ChooseFormProps = {
  /** By which fields outside the form belong to it. */
  readonly id: string;
  readonly onFile?: (file: File) => void;
};

/** The empty bench. A plain form that works by itself; with scripts a chosen file is laid on the bench first. */
export function ChooseForm({ id, onFile }: ChooseFormProps) {
  const t = useTranslations("bench");

  function changed(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0];
    if (file) onFile?.(file);
    // The same file can be chosen again after it was refused.
    event.target.value = "";
  }

  return (
    <form id={id} className={styles.empty} action="/api/look-ups" method="post" encType="multipart/form-data">
      <div className={styles.corners} aria-hidden="true" />
      <div className={styles.ways}>
        <span className={styles.file}>
          <input id="photograph" type="file" name="photograph" accept={ACCEPT} required onChange={changed} />
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
        <button type="submit" className={`${plain.button} ${styles.plainSend}`}>
          {t("lookUp")}
        </button>
        <p className={styles.dropWords}>{t("drop")}</p>
      </div>
      <p className={plain.note}>{t("limits", LIMITS)}</p>
    </form>
  );
}
