import type { ReactNode } from "react";
import styles from "./diamond.module.css";

/** Our own drawing of the mark: a circle on a diamond whose corners are cut off by arcs, Rd in the middle. */
export function DiamondOutline({ children }: { readonly children?: ReactNode }) {
  return (
    <svg viewBox="0 0 120 132" className={styles.outline} aria-hidden="true" focusable="false">
      <g fill="none" stroke="currentColor" strokeWidth="1.5">
        <circle cx="60" cy="17" r="15" />
        <path d="M60 32 110 81 60 130 10 81Z" strokeLinejoin="round" />
        <path d="M43 48.700Q60 66 77 48.700M93 64.300Q75 81 93 97.700M77 113.300Q60 96 43 113.300M27 97.700Q45 81 27 64.300" />
      </g>
      {children ?? (
        <text x="60" y="85.500" textAnchor="middle" className={styles.rd}>
          R<tspan className={styles.raised}>d</tspan>
        </text>
      )}
    </svg>
  );
}
