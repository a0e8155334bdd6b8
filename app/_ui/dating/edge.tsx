import { type Axis, at } from "../time/axis.ts";
import styles from "./dating.module.css";
import { ROW_LINE } from "./row-line.ts";

/** An end with nothing known on its other side, or a bound: a stroke across the row. */
export function Edge({ year, axis }: { readonly year: number; readonly axis: Axis }) {
  return (
    <rect
      className={styles.edge}
      x={`${at(year, axis)}%`}
      y={ROW_LINE}
      width="2.5"
      height="16"
      transform="translate(-1.25 -8)"
    />
  );
}
