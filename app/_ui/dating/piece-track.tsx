import { widened } from "#core/dates/circa-policy";
import type { Interval } from "#core/dates/interval";
import { modelOf } from "#core/dating/event-model";
import type { Evidence } from "#core/dating/evidence";
import { periodsOf } from "#core/dating/window";
import { type Axis, at } from "../time/axis.ts";
import time from "../time/time.module.css";
import styles from "./dating.module.css";
import { Edge } from "./edge.tsx";
import { GridLines } from "./grid-lines.tsx";
import { ROW_LINE } from "./row-line.ts";

/** A bar that takes less of the axis, in percent, would not be seen. */
const THIN = 0.5;

/**
 * The window of one piece: a bar for what is stated, dashed where it is only about right, and dots for the years it
 * leaves open for the making. What says nothing of the making is hollow.
 */
export function PieceTrack({ piece, axis }: { readonly piece: Evidence; readonly axis: Axis }) {
  return (
    <svg className={time.track} width="100%" height="100%" aria-hidden="true" focusable="false">
      <GridLines axis={axis} />
      {periodsOf(piece).map((period) => (
        <Window key={period.edtf} piece={piece} period={period} axis={axis} />
      ))}
    </svg>
  );
}

type WindowProps = { readonly piece: Evidence; readonly period: Interval; readonly axis: Axis };

function Window({ piece, period, axis }: WindowProps) {
  const { side, bounds } = modelOf(piece);
  const { from, to, softFrom, softTo } = widened(period);
  const start = from ?? to;
  const end = to ?? from;
  if (start === null || end === null) return null;
  const line = (className: string | undefined, a: number, b: number) => (
    <line className={className} x1={`${at(a, axis)}%`} x2={`${at(b, axis)}%`} y1={ROW_LINE} y2={ROW_LINE} />
  );
  const opensBelow = from === null || !bounds.lower;
  const opensAbove = to === null || bounds.upper === null;
  if (side === "apart")
    return (
      <rect
        className={styles.hollow}
        x={`${at(start, axis)}%`}
        width={`${Math.max(0.4, at(end, axis) - at(start, axis))}%`}
        y={ROW_LINE}
        height="8"
        transform="translate(0 -4)"
      />
    );
  return (
    <>
      {opensBelow && line(styles.left, axis.from, start)}
      {opensAbove && line(styles.left, end, axis.to)}
      {softFrom !== null && softFrom < start && line(time.about, softFrom, start)}
      {softTo !== null && softTo > end && line(time.about, end, softTo)}
      {from !== null && to !== null && line(time.firm, start, end)}
      {(from === null || to === null || at(end, axis) - at(start, axis) < THIN) && (
        <Edge year={start} axis={axis} />
      )}
    </>
  );
}
