import type { Estimate } from "#core/dating/estimate";
import { type Axis, at } from "../time/axis.ts";
import styles from "./dating.module.css";
import { GridLines } from "./grid-lines.tsx";

/** Units of the drawing from no probability to the likeliest year. */
const HIGH = 100;

/**
 * How likely each year is, as steps; the years that hold a half are filled in, and bars under them show where 95, 80
 * and 50 in 100 lie, the thicker the fewer. Decoration: the words beside it and the table under it say the same.
 */
export function Distribution({ estimate, axis }: { readonly estimate: Estimate; readonly axis: Axis }) {
  const { shortest } = estimate;
  return (
    <div className={styles.distribution}>
      <svg aria-hidden="true" className={styles.lines} width="100%" height="100%" focusable="false">
        <GridLines axis={axis} />
      </svg>
      <svg
        aria-hidden="true"
        className={styles.heap}
        viewBox={`0 0 ${axis.to - axis.from} ${HIGH}`}
        preserveAspectRatio="none"
        focusable="false"
      >
        <path className={styles.all} d={steps(estimate, axis, axis.from, axis.to)} />
        {shortest[50].ranges.map(({ from, to }) => (
          <path key={from} className={styles.half} d={steps(estimate, axis, from, to + 1)} />
        ))}
        <path className={styles.outline} d={steps(estimate, axis, axis.from, axis.to)} />
      </svg>
      <svg aria-hidden="true" className={styles.spans} width="100%" focusable="false">
        {([95, 80, 50] as const).flatMap((share) =>
          shortest[share].spans.map(({ begins, ends }) => (
            <line
              key={`${share} ${begins}`}
              className={styles[`span${share}`]}
              x1={`${at(begins, axis)}%`}
              x2={`${at(ends, axis)}%`}
              y1="50%"
              y2="50%"
            />
          )),
        )}
      </svg>
    </div>
  );
}

/** The outline of the years from one to before another, closed along the bottom. */
function steps({ grid, posterior }: Estimate, axis: Axis, from: number, to: number): string {
  const most = Math.max(...posterior);
  const [first, end] = [Math.max(from, axis.from), Math.min(to, axis.to)];
  const path = [`M${first - axis.from} ${HIGH}`];
  for (let year = first; year < end; year++) {
    const y = HIGH * (1 - (posterior[year - grid.from] ?? 0) / most);
    path.push(`V${y.toFixed(2)}H${year + 1 - axis.from}`);
  }
  return `${path.join("")}V${HIGH}Z`;
}
