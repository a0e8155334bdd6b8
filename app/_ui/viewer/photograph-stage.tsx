"use client";

import { useTranslations } from "next-intl";
import { useState } from "react";
import { TransformComponent, TransformWrapper } from "react-zoom-pan-pinch";
import type { Photograph } from "#core/photographs/photograph";
import { fullImage, imageSizes } from "../image-address.ts";
import styles from "./viewer.module.css";
import { ZoomButtons } from "./zoom-buttons.tsx";
import { ZOOM } from "./zoom-settings.ts";

type PhotographStageProps = {
  readonly photograph: Photograph;
  readonly title: string;
  readonly onScale: (scale: number) => void;
};

/** One photograph that can be brought nearer: by buttons, keys, fingers, or the wheel with Ctrl held. */
export function PhotographStage({ photograph, title, onScale }: PhotographStageProps) {
  const t = useTranslations("viewer");
  const [near, setNear] = useState(false);
  const { width, height } = photograph;
  return (
    <div className={styles.stage} style={{ "--shape": width / height } as React.CSSProperties}>
      <TransformWrapper
        {...ZOOM}
        panning={{ disabled: !near }}
        onTransform={(_, state) => {
          onScale(state.scale);
          setNear(state.scale > 1.01);
        }}
      >
        <TransformComponent
          wrapperClass={styles.wrapper ?? ""}
          contentClass={styles.content ?? ""}
          wrapperStyle={{ aspectRatio: `${width} / ${height}`, touchAction: near ? "none" : "pan-y" }}
          wrapperProps={{ role: "group", "aria-label": t("stage"), "aria-describedby": "zoom-keys" }}
        >
          <img
            src={fullImage(photograph)}
            srcSet={imageSizes(photograph)}
            sizes={near ? "300vw" : "(max-width: 60rem) 100vw, 58vw"}
            width={width}
            height={height}
            alt={t("alt", { title, shows: photograph.shows })}
          />
        </TransformComponent>
        <ZoomButtons />
      </TransformWrapper>
    </div>
  );
}
