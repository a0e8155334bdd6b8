"use client";

import dynamic from "next/dynamic";
import { useTranslations } from "next-intl";
import { type ReactNode, useRef } from "react";
import type { Region } from "#core/photographs/region";
import plain from "../plain.module.css";
import type { Size } from "./crop-geometry.ts";
import { CropNumbers } from "./crop-numbers.tsx";
import styles from "./cropping.module.css";
import { Turning } from "./turning.tsx";

// Only ever in the browser: the cropper numbers its parts by the order they are made in.
const CropStage = dynamic(() => import("./crop-stage.tsx").then((module) => module.CropStage), {
  ssr: false,
});

type CroppingProps = {
  readonly src: string;
  readonly image: Size | null;
  readonly region: Region | null;
  readonly onRegion: (region: Region) => void;
  readonly name: string;
  readonly unreadable?: boolean;
  /** What is said of where the mark is. */
  readonly place?: ReactNode;
  /** The buttons: what may be done with the photograph now. */
  readonly children: ReactNode;
  /** Stands under the buttons: the other photographs on the bench. */
  readonly others?: ReactNode;
};

/** A photograph on the bench: the picture with the box, and beside it the same box as turn and numbers. */
export function Cropping({
  src,
  image,
  region,
  onRegion,
  name,
  unreadable = false,
  place,
  children,
  others,
}: CroppingProps) {
  const t = useTranslations("bench");
  const actions = useRef<HTMLDivElement>(null);
  return (
    <section className={styles.cropping} aria-labelledby="cropping">
      <div className={styles.head}>
        <h2 id="cropping" tabIndex={-1}>
          {t("cropHeading")}
        </h2>
        {place}
        <p className={plain.note}>{unreadable ? t("unreadable") : t("cropNote")}</p>
        <button
          type="button"
          className={styles.skip}
          onClick={() => actions.current?.querySelector("button")?.focus()}
        >
          {t("skipFrame")}
        </button>
      </div>
      <div className={styles.picture}>
        {image && region ? (
          <CropStage src={src} image={image} region={region} onRegion={onRegion} />
        ) : (
          <p className={styles.blank}>{unreadable ? name : t("reading")}</p>
        )}
      </div>
      <div className={styles.side}>
        <div className={styles.actions} ref={actions}>
          {children}
        </div>
        {others}
        {image && region && (
          <>
            <Turning image={image} region={region} onRegion={onRegion} />
            <CropNumbers image={image} region={region} onRegion={onRegion} />
          </>
        )}
      </div>
    </section>
  );
}
