import { type Axis, at } from "./axis.ts";
import styles from "./time.module.css";

/** The years along the axis. */
export function Ticks({ axis }: { readonly axis: Axis }) {
  const last = axis.ticks.length - 1;
  return (
    <svg className={styles.ticks} width="100%" height="24" aria-hidden="true" focusable="false">
      {axis.ticks.map((year, i) => (
        <g key={year}>
          <line className={styles.tick} x1={`${at(year, axis)}%`} x2={`${at(year, axis)}%`} y1="17" y2="24" />
          <text
            x={`${at(year, axis)}%`}
            y="13"
            textAnchor={i === 0 ? "start" : i === last ? "end" : "middle"}
          >
            {year}
          </text>
        </g>
      ))}
      <line className={styles.tick} x1="0" x2="100%" y1="23.5" y2="23.5" />
    </svg>
  );
}
