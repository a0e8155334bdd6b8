import { type Axis, at } from "../time/axis.ts";
import time from "../time/time.module.css";

/** The years' lines, running through a row so that they join from row to row. */
export function GridLines({ axis }: { readonly axis: Axis }) {
  return axis.ticks.map((year) => (
    <line
      key={year}
      className={time.grid}
      x1={`${at(year, axis)}%`}
      x2={`${at(year, axis)}%`}
      y1="0"
      y2="100%"
    />
  ));
}
