"use client";

import { useTranslations } from "next-intl";
import type { Region } from "#core/photographs/region";
import plain from "../plain.module.css";
import { Slider } from "../slider.tsx";
import { wayAndSize } from "../way-and-size.ts";
import { type Size, turned } from "./crop-geometry.ts";
import styles from "./cropping.module.css";
import { QuarterTurn } from "./quarter-turn.tsx";

type TurningProps = {
  readonly image: Size;
  readonly region: Region;
  readonly onRegion: (region: Region) => void;
};

/** Brings the mark upright: by quarter turns, and finely by a slider. */
export function Turning({ image, region, onRegion }: TurningProps) {
  const t = useTranslations("bench");
  const turn = signed(region.turn);
  const turnTo = (degrees: number) => onRegion(turned(region, signed(degrees), image));
  return (
    <div className={styles.turning}>
      <Slider
        label={t("turn")}
        value={turn}
        min={-180}
        max={180}
        origin={0}
        onChange={turnTo}
        words={(degrees) => t("degrees", wayAndSize(degrees))}
      />
      <div className={styles.quarters}>
        <button type="button" className={plain.quiet} onClick={() => turnTo(turn - 90)}>
          <QuarterTurn left />
          {t("quarterLeft")}
        </button>
        <button type="button" className={plain.quiet} onClick={() => turnTo(turn + 90)}>
          <QuarterTurn />
          {t("quarterRight")}
        </button>
      </div>
    </div>
  );
}

/** Degrees clockwise from -180 (left out) to 180. */
function signed(degrees: number): number {
  const turn = ((degrees % 360) + 360) % 360;
  return turn > 180 ? turn - 360 : turn;
}
