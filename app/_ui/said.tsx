import styles from "./said.module.css";

/** What was just done, said where it was done. */
export function Said({ children }: { readonly children: string }) {
  return (
    <p className={styles.said} role="status">
      {children}
    </p>
  );
}
