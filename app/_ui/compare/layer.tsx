import type { ReactNode } from "react";
import type { Region } from "#core/photographs/region";
import { placed } from "../cut.tsx";
import { imageAtLeast } from "../image-address.ts";
import styles from "./compare.module.css";

type LayerProps = {
  readonly image: {
    readonly sha256: string;
    readonly width: number;
    readonly height: number;
    readonly region: Region;
  };
  readonly alt: string;
  readonly turn?: number;
  readonly scale?: number;
  /** What lies over the photograph, in the box that its region fills. */
  readonly children?: ReactNode;
};

/** Pixels across which a region is fetched, so that it stays sharp some way in. */
const SHARP_TO = 1200;

/** How much of the pane the longer side of the region takes: the rest is a margin, so that nothing of it is cut off. */
const FIT = "84%";

/** A photograph whose region fits into the pane; what lies around the region stays in sight. */
export function Layer({ image, alt, turn = 0, scale = 1, children }: LayerProps) {
  const { width, height } = image.region;
  const fit = width >= height ? { width: FIT } : { height: FIT };
  return (
    <span className={styles.layer}>
      <span className={styles.box} style={{ aspectRatio: `${width} / ${height}`, ...fit, scale }}>
        <img
          src={imageAtLeast(image, (SHARP_TO * image.width) / width)}
          alt={alt}
          draggable={false}
          style={placed(image, turn)}
        />
        {children}
      </span>
    </span>
  );
}
