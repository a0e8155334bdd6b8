import type { Interval } from "#core/dates/interval";
import { type Axis, at } from "./axis.ts";
import styles from "./time.module.css";

/** By how many years to either side the end of a bar is dashed when its year is only about right. */
const ABOUT = 4;
const MIDDLE = "50%";

/**
 * One period on the page's axis. A firm end is cut square, an approximate one is dashed, an open or unknown one
 * runs on as dots to the edge. Decoration: the words beside it say the same.
 */
export function Track({ period, axis }: { readonly period: Interval | null; readonly axis: Axis }) {
  return (
    <svg className={styles.track} width="100%" height="100%" aria-hidden="true" focusable="false">
      {axis.ticks.map((year) => (
        <line
          key={year}
          className={styles.grid}
          x1={`${at(year, axis)}%`}
          x2={`${at(year, axis)}%`}
          y1="0"
          y2="100%"
        />
      ))}
      {period && <Bar period={period} axis={axis} />}
    </svg>
  );
}

function Bar({ period, axis }: { readonly period: Interval; readonly axis: Axis }) {
  const { start, end, earliest, latest } = period;
  const known = earliest ?? latest;
  if (known === null) return null;
  const from = earliest ?? known;
  // A period of one year still has a width; the last year counts to its end.
  const to = (latest ?? known) + 1;
  const coreFrom = start.approximate || start.uncertain ? Math.min(from + ABOUT, (from + to) / 2) : from;
  const coreTo = end.approximate || end.uncertain ? Math.max(to - ABOUT, (from + to) / 2) : to;
  const line = (className: string | undefined, a: number, b: number) => (
    <line className={className} x1={`${at(a, axis)}%`} x2={`${at(b, axis)}%`} y1={MIDDLE} y2={MIDDLE} />
  );
  return (
    <>
      {earliest === null && line(styles.open, axis.from, to)}
      {latest === null && line(styles.open, from, axis.to)}
      {coreFrom > from && line(styles.about, from - ABOUT, coreFrom)}
      {coreTo < to && line(styles.about, coreTo, to + ABOUT)}
      {line(styles.firm, coreFrom, coreTo)}
    </>
  );
}
