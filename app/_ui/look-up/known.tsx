"use client";

import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import plain from "../plain.module.css";
import styles from "./known.module.css";
import { KnownFields, type KnownFieldsProps } from "./known-fields.tsx";
import { isAboutKnown } from "./known-in.ts";

type KnownProps = KnownFieldsProps & { readonly children?: ReactNode };

/** "What else do you know?": folded up until it is wanted, something was typed, or something in it is wrong. */
export function Known({ children, ...fields }: KnownProps) {
  const t = useTranslations("known");
  const filled = Object.values(fields.typed).some((value) => value !== "");
  return (
    <details id="known" className={styles.known} open={filled || isAboutKnown(fields.error)}>
      <summary>{t("heading")}</summary>
      <div className={styles.unfolded}>
        <p className={plain.note}>{t("note")}</p>
        <KnownFields {...fields} />
        {children}
      </div>
    </details>
  );
}
