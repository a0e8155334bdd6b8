import { DIAMOND_SERIES } from "#core/decoding/diamond-table";
import styles from "./diamond.module.css";
import { DiamondKey } from "./diamond-key.tsx";
import { DiamondLetters } from "./diamond-letters.tsx";

/** What the corners hold in each series, and the letters: to look at, not needed for reading. */
export function DiamondHelp() {
  return (
    <div className={styles.help}>
      <div className={styles.keys}>
        {DIAMOND_SERIES.map((series) => (
          <DiamondKey key={series} series={series} />
        ))}
      </div>
      <DiamondLetters />
    </div>
  );
}
