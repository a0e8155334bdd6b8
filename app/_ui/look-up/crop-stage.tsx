"use client";

import { useTranslations } from "next-intl";
import ReactCrop, { type PercentCrop } from "react-image-crop";
import type { Region } from "#core/photographs/region";
import "react-image-crop/dist/ReactCrop.css";
import { isWhole, regionOf, type Size, shown, towards, turnedSize } from "./crop-geometry.ts";
import styles from "./crop-stage.module.css";

type CropStageProps = {
  readonly src: string;
  readonly image: Size;
  readonly region: Region;
  readonly onRegion: (region: Region) => void;
};

/**
 * The photograph, turned, with the box over the mark: by pointer, touch, or the arrow keys on box and handles. While
 * the box is the whole photograph there is nowhere to move it to, so a drag inside it draws a new one.
 */
export function CropStage({ src, image, region, onRegion }: CropStageProps) {
  const t = useTranslations("bench");
  const whole = turnedSize(image, region.turn);
  const box = shown(region, image);
  const drawing = isWhole(region, image);
  const crop: PercentCrop = {
    unit: "%",
    x: (100 * box.x) / whole.width,
    y: (100 * box.y) / whole.height,
    width: (100 * box.width) / whole.width,
    height: (100 * box.height) / whole.height,
  };

  function change(next: PercentCrop) {
    if (next.width === 0 || next.height === 0) return;
    const wanted = {
      x: (next.x * whole.width) / 100,
      y: (next.y * whole.height) / 100,
      width: (next.width * whole.width) / 100,
      height: (next.height * whole.height) / 100,
    };
    onRegion(towards(region, regionOf(wanted, image, region.turn), image));
  }

  return (
    <div
      className={styles.stage}
      data-drawing={drawing || undefined}
      style={{ "--shape": whole.width / whole.height } as React.CSSProperties}
    >
      <ReactCrop
        crop={crop}
        onChange={(_, percent) => change(percent)}
        keepSelection={!drawing}
        minWidth={12}
        minHeight={12}
        className={styles.crop ?? ""}
        ariaLabels={{
          cropArea: t("cropArea"),
          nwDragHandle: t("handle.nw"),
          nDragHandle: t("handle.n"),
          neDragHandle: t("handle.ne"),
          eDragHandle: t("handle.e"),
          seDragHandle: t("handle.se"),
          sDragHandle: t("handle.s"),
          swDragHandle: t("handle.sw"),
          wDragHandle: t("handle.w"),
        }}
      >
        <span className={styles.turned} style={{ aspectRatio: `${whole.width} / ${whole.height}` }}>
          <img
            src={src}
            alt={t("yourPhotograph")}
            draggable={false}
            style={{
              width: `${(100 * image.width) / whole.width}%`,
              height: `${(100 * image.height) / whole.height}%`,
              transform: `translate(-50%, -50%) rotate(${region.turn}deg)`,
            }}
          />
        </span>
      </ReactCrop>
    </div>
  );
}
