"use client";

import { useTranslations } from "next-intl";
import plain from "../plain.module.css";
import { Slider } from "../slider.tsx";
import styles from "./compare.module.css";
import type { AlignmentState } from "./use-alignment.ts";

type LaidToolsProps = {
  readonly state: AlignmentState;
  readonly onAgain: () => void;
  readonly opacity: number;
  readonly onOpacity: (opacity: number) => void;
  readonly points: boolean;
  readonly onPoints: (points: boolean) => void;
};

/** How well the two lie over each other, in words, and how they are looked at. */
export function LaidTools({ state, onAgain, opacity, onOpacity, points, onPoints }: LaidToolsProps) {
  const t = useTranslations("compare");
  return (
    <div className={styles.laidTools}>
      <p role="status">
        {state.now === "found" && t("laidAgree", { count: state.alignment.inliers })}
        {state.now === "none" && t("laidNone")}
        {state.now === "failed" && t("laidFailed")}
        {(state.now === "asking" || state.now === "unasked") && t("laidAsking")}
      </p>
      {state.now === "failed" && (
        <button type="button" className={plain.quiet} onClick={onAgain}>
          {t("laidAgain")}
        </button>
      )}
      {state.now === "found" && (
        <>
          <div className={styles.control}>
            <Slider
              label={t("opacity")}
              value={opacity}
              min={0}
              max={100}
              onChange={onOpacity}
              words={(percent) => t("opacityAt", { percent })}
            />
          </div>
          <label className={styles.check}>
            <input type="checkbox" checked={points} onChange={() => onPoints(!points)} />
            <span>{t("points")}</span>
          </label>
        </>
      )}
    </div>
  );
}
