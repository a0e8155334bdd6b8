"use client";

import { useFormatter, useTranslations } from "next-intl";
import { useEffect, useRef } from "react";
import { STAGES } from "#core/look-ups/look-up";
import plain from "../plain.module.css";
import styles from "./progress.module.css";
import type { Running } from "./use-look-up.ts";

type ProgressProps = { readonly state: Running; readonly of?: string; readonly onCancel: () => void };

/** What is being done, in words, step by step; and the way to stop it. */
export function Progress({ state, of, onCancel }: ProgressProps) {
  const t = useTranslations("bench");
  const format = useFormatter();
  const cancel = useRef<HTMLButtonElement>(null);
  useEffect(() => cancel.current?.focus(), []);
  const reached = state.stage === null ? -1 : STAGES.indexOf(state.stage);
  const sending = state.stage === null && state.uploaded > 0 && state.uploaded < 1;
  return (
    <div className={styles.progress}>
      {of && <p className={styles.of}>{of}</p>}
      <ol className={styles.steps}>
        {STAGES.map((stage, i) => (
          <li key={stage} data-at={i <= reached ? "done" : i === reached + 1 ? "now" : "later"}>
            <span>
              {i <= reached ? t(`did.${stage}`) : t(`doing.${stage}`)}
              {i === 0 && sending && ` ${format.number(state.uploaded, { style: "percent" })}`}
            </span>
          </li>
        ))}
      </ol>
      <p className={plain.hidden} role="status">
        {t(`doing.${STAGES[Math.min(reached + 1, STAGES.length - 1)] ?? "done"}`)}
      </p>
      <button type="button" ref={cancel} className={plain.quiet} onClick={onCancel}>
        {t("cancel")}
      </button>
    </div>
  );
}
