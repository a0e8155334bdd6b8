import type { ReactNode } from "react";
import styles from "./state-sign.module.css";

/** A state as a word with a small drawn sign: never by its colour alone. */
export function StateDrawing({ word, children }: { readonly word: string; readonly children: ReactNode }) {
  return (
    <span className={styles.state}>
      <svg
        width="16"
        height="16"
        viewBox="0 0 16 16"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.4"
        aria-hidden="true"
      >
        {children}
      </svg>
      {word}
    </span>
  );
}
