"use client";

import { useEffect, useRef, useState } from "react";
import type { Region } from "#core/photographs/region";
import { fullImage } from "../image-address.ts";
import styles from "./compare.module.css";
import { outline, warp } from "./warp.ts";

type LaidOverProps = {
  readonly query: {
    readonly sha256: string;
    readonly width: number;
    readonly height: number;
    readonly region: Region;
  };
  readonly alt: string;
  /** The region of the reference, which fills the box that this lies in. */
  readonly region: Region;
  readonly homography: readonly number[];
  readonly opacity: number;
};

/** The looked-up mark warped onto the entry's, inside the entry's own box. */
export function LaidOver({ query, alt, region, homography, opacity }: LaidOverProps) {
  const frame = useRef<HTMLSpanElement>(null);
  const [across, setAcross] = useState(0);
  useEffect(() => {
    const measured = frame.current;
    if (!measured) return;
    const observer = new ResizeObserver(() => setAcross(measured.offsetWidth));
    observer.observe(measured);
    return () => observer.disconnect();
  }, []);
  return (
    <span ref={frame} className={styles.laid} style={{ transform: `rotate(${region.turn}deg)` }}>
      <img
        src={fullImage(query)}
        alt={alt}
        draggable={false}
        style={{
          width: query.width,
          height: query.height,
          clipPath: outline(query.region),
          transform: warp(homography, region, across / region.width),
          opacity: across > 0 ? opacity : 0,
        }}
      />
    </span>
  );
}
