import type { CSSProperties } from "react";
import type { Region } from "#core/photographs/region";
import styles from "./cut.module.css";
import { imageAtLeast } from "./image-address.ts";

export type Cuttable = {
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly region: Region;
};

type CutProps = {
  readonly image: Cuttable;
  readonly alt: string;
  /** Width in pixels at which the cut will be seen; decides which size of the image is fetched. */
  readonly shownAt: number;
  /** Degrees clockwise, besides the region's own turn. */
  readonly turn?: number;
  /** Another address of the same image, when it is not stored yet. */
  readonly src?: string;
  readonly eager?: boolean;
  /** The place around a wide cut is as high as the cut, not a full square. */
  readonly snug?: boolean;
};

/**
 * The region of interest of a photograph, cut out by the browser: turned about the box's centre, as the
 * reference turns it. Fits into the square around it, whatever the shape of the box.
 */
export function Cut({ image, alt, shownAt, turn = 0, src, eager = false, snug = false }: CutProps) {
  const { region } = image;
  const address = src ?? imageAtLeast(image, (shownAt * image.width) / region.width);
  return (
    <span className={snug && region.width > region.height ? styles.snug : styles.square}>
      <span className={styles.box} style={boxStyle(region)}>
        <img
          src={address}
          alt={alt}
          loading={eager ? "eager" : "lazy"}
          decoding="async"
          style={placed(image, turn)}
        />
      </span>
    </span>
  );
}

function boxStyle({ width, height }: Region): CSSProperties {
  return {
    aspectRatio: `${width} / ${height}`,
    ...(width >= height ? { width: "100%" } : { height: "100%" }),
  };
}

/** Where the whole image lies so that its region fills the box around it. */
export function placed({ width, height, region }: Cuttable, turn: number): CSSProperties {
  const percent = (part: number, whole: number) => `${(100 * part) / whole}%`;
  return {
    position: "absolute",
    maxWidth: "none",
    width: percent(width, region.width),
    height: percent(height, region.height),
    left: percent(-region.x, region.width),
    top: percent(-region.y, region.height),
    transformOrigin: `${percent(region.x + region.width / 2, width)} ${percent(region.y + region.height / 2, height)}`,
    transform: `rotate(${region.turn + turn}deg)`,
  };
}
