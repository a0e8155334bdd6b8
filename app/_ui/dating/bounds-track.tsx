import { dayAfter, dayOf, inYears } from "#core/dates/day";
import type { HardBounds } from "#core/dating/bounds";
import { type Axis, at } from "../time/axis.ts";
import time from "../time/time.module.css";
import styles from "./dating.module.css";
import { Edge } from "./edge.tsx";
import { GridLines } from "./grid-lines.tsx";
import { ROW_LINE } from "./row-line.ts";

/** Not before and not after as two strokes with a thin line between; dots where there is no bound. */
export function BoundsTrack({ bounds, axis }: { readonly bounds: HardBounds; readonly axis: Axis }) {
  const from = bounds.notBefore && inYears(dayOf(bounds.notBefore.day));
  const to = bounds.notAfter && inYears(dayAfter(dayOf(bounds.notAfter.day)));
  const isOpen = from === null || to === null;
  return (
    <svg className={time.track} width="100%" height="100%" aria-hidden="true" focusable="false">
      <GridLines axis={axis} />
      {(from !== null || to !== null) && (
        <line
          className={isOpen ? styles.left : styles.between}
          x1={`${at(from ?? axis.from, axis)}%`}
          x2={`${at(to ?? axis.to, axis)}%`}
          y1={ROW_LINE}
          y2={ROW_LINE}
        />
      )}
      {from !== null && <Edge year={from} axis={axis} />}
      {to !== null && <Edge year={to} axis={axis} />}
    </svg>
  );
}
