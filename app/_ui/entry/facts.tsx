import type { ReactNode } from "react";
import styles from "./entry.module.css";

/** Names and values, one under the other; what is not known is left out. */
export function Facts({ facts }: { readonly facts: readonly (readonly [string, ReactNode])[] }) {
  const known = facts.filter(
    ([, value]) => value !== null && value !== undefined && value !== "" && value !== false,
  );
  if (known.length === 0) return null;
  return (
    <dl className={styles.facts}>
      {known.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
