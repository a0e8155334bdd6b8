import type { ReliabilityBin } from "#core/similarity/calibration";
import styles from "./how-sure.module.css";

/** Units of the drawing, which is as wide as it is high. */
const SIDE = 100;
const LARGEST = 4;

/** What was said across, what was so upwards; a dot a bin, its area the share of answers. The table says it in numbers. */
export function ReliabilityDiagram({
  bins,
  across,
  upwards,
}: {
  readonly bins: readonly ReliabilityBin[];
  /** What the axes say, with their units. */
  readonly across: string;
  readonly upwards: string;
}) {
  const most = Math.max(1, ...bins.map(({ count }) => count));
  const ticks = [0, 25, 50, 75, 100];
  return (
    <svg className={styles.diagram} viewBox="-16 -5 122 118" aria-hidden="true" focusable="false">
      {ticks.map((tick) => (
        <g key={tick}>
          <line x1={0} x2={SIDE} y1={SIDE - tick} y2={SIDE - tick} className={styles.grid} />
          <line x1={tick} x2={tick} y1={0} y2={SIDE} className={styles.grid} />
          <text x={-2} y={SIDE - tick + 1.3} textAnchor="end">
            {tick}
          </text>
          <text x={tick} y={SIDE + 5.5} textAnchor="middle">
            {tick}
          </text>
        </g>
      ))}
      <text x={SIDE / 2} y={SIDE + 11.5} textAnchor="middle">
        {across}
      </text>
      <text transform={`translate(-11.5 ${SIDE / 2}) rotate(-90)`} textAnchor="middle">
        {upwards}
      </text>
      <line x1={0} y1={SIDE} x2={SIDE} y2={0} className={styles.same} />
      {bins.map(({ count, probability, right }, i) => {
        if (probability === null || right === null) return null;
        const [x, y] = [SIDE * probability, SIDE * (1 - right)];
        return (
          <g key={i}>
            <line x1={x} x2={x} y1={y} y2={SIDE - x} className={styles.off} />
            <circle
              cx={x}
              cy={y}
              r={Math.max(0.9, LARGEST * Math.sqrt(count / most))}
              className={styles.dot}
            />
          </g>
        );
      })}
    </svg>
  );
}
