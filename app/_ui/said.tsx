import type { ReactNode } from "react";
import styles from "./said.module.css";

/** What was just done, said where it was done. */
export function Said({ children }: { readonly children: ReactNode }) {
  return (
    <p className={styles.said} role="status">
      {children}
    </p>
  );
}
