import type { Place } from "#core/photographs/alignment";
import type { Region } from "#core/photographs/region";
import styles from "./compare.module.css";

type AgreeingPointsProps = {
  readonly points: readonly Place[];
  readonly region: Region;
  /** Degrees clockwise, besides the region's own turn. */
  readonly turn?: number;
};

/** Rings round the points that both photographs show, inside the box that the region fills. */
export function AgreeingPoints({ points, region, turn = 0 }: AgreeingPointsProps) {
  const radius = Math.max(region.width, region.height) / 100;
  return (
    <svg
      className={styles.points}
      viewBox={`${region.x} ${region.y} ${region.width} ${region.height}`}
      style={{ transform: `rotate(${region.turn + turn}deg)` }}
      aria-hidden="true"
    >
      {points.map(([x, y]) => (
        <g key={`${x} ${y}`}>
          <circle cx={x} cy={y} r={radius} strokeWidth={radius / 1.6} />
          <circle cx={x} cy={y} r={radius} strokeWidth={radius / 3.2} />
        </g>
      ))}
    </svg>
  );
}
