"use client";

import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import plain from "../plain.module.css";
import styles from "./known.module.css";
import { KnownFields, type KnownFieldsProps } from "./known-fields.tsx";
import { isAboutKnown } from "./known-in.ts";

type KnownProps = KnownFieldsProps & {
  /** Stays folded up although something is typed, where what was typed stands beside it. */
  readonly folded?: boolean;
  readonly children?: ReactNode;
};

/** "What else do you know?": folded up until it is wanted, something was typed, or something in it is wrong. */
export function Known({ folded = false, children, ...fields }: KnownProps) {
  const t = useTranslations("known");
  const filled = Object.values(fields.typed).some((value) => value !== "");
  return (
    <details id="known" className={styles.known} open={(filled && !folded) || isAboutKnown(fields.error)}>
      <summary>{t("heading")}</summary>
      <div className={styles.unfolded}>
        <p className={plain.note}>{t("note")}</p>
        <KnownFields {...fields} />
        {children}
      </div>
    </details>
  );
}
