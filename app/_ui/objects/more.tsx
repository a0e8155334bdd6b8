import type { ReactNode } from "react";
import styles from "./objects.module.css";

type MoreProps = {
  readonly words: string;
  readonly isOpen?: boolean;
  readonly id?: string;
  readonly children: ReactNode;
};

/** What is out of the way until it is wanted. */
export function More({ words, isOpen = false, id, children }: MoreProps) {
  return (
    <details className={styles.more} open={isOpen} id={id}>
      <summary>{words}</summary>
      {children}
    </details>
  );
}
