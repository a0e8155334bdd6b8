"use client";

import { useTranslations } from "next-intl";
import { NumberField } from "../number-field.tsx";
import plain from "../plain.module.css";
import { Slider } from "../slider.tsx";
import styles from "./compare.module.css";
import { MODES, type Mode } from "./modes.ts";
import type { Blink } from "./use-blink.ts";
import type { LinkedZoom } from "./use-linked-zoom.ts";

type CompareToolsProps = {
  readonly mode: Mode;
  readonly onMode: (mode: Mode) => void;
  readonly turn: number;
  readonly matched: number;
  readonly onTurn: (turn: number) => void;
  readonly wipe: number;
  readonly onWipe: (wipe: number) => void;
  readonly blink: Blink;
  readonly zoom: LinkedZoom;
  readonly millimetres: number;
  /** Left out when the photograph's scale is not known. */
  readonly onMillimetres?: (millimetres: number) => void;
};

/** How the two photographs lie, how near, how turned, and at which size. */
export function CompareTools(props: CompareToolsProps) {
  const t = useTranslations("compare");
  const { mode, blink, zoom, turn, wipe } = props;
  return (
    <div className={styles.tools}>
      <fieldset className={styles.modes}>
        <legend className={plain.hidden}>{t("modes")}</legend>
        {MODES.map((each) => (
          <label key={each}>
            <input
              type="radio"
              name="mode"
              value={each}
              checked={mode === each}
              onChange={() => props.onMode(each)}
            />
            <span>{t(`mode.${each}`)}</span>
          </label>
        ))}
      </fieldset>
      <div className={styles.zoom}>
        <button type="button" className={plain.quiet} onClick={zoom.farther}>
          {t("farther")}
        </button>
        <button type="button" className={plain.quiet} onClick={zoom.nearer}>
          {t("nearer")}
        </button>
        <button type="button" className={plain.quiet} onClick={zoom.whole}>
          {t("whole")}
        </button>
      </div>
      {mode === "wipe" && (
        <div className={styles.control}>
          <Slider
            label={t("wipe")}
            value={wipe}
            min={0}
            max={100}
            onChange={props.onWipe}
            words={(percent) => t("wipeAt", { percent })}
          />
        </div>
      )}
      {mode === "blink" && (
        <div className={styles.zoom}>
          <button type="button" className={plain.quiet} onClick={() => blink.setGoing(!blink.going)}>
            {blink.going ? t("stop") : t("start")}
          </button>
          <button type="button" className={plain.quiet} onClick={blink.swap}>
            {t("swap")}
          </button>
        </div>
      )}
      <div className={styles.control}>
        <Slider
          label={t("turn")}
          value={turn}
          min={-180}
          max={180}
          origin={props.matched > 180 ? props.matched - 360 : props.matched}
          onChange={props.onTurn}
          words={(degrees) => t("degrees", { degrees })}
        />
      </div>
      {props.onMillimetres && (
        <div className={styles.size}>
          <NumberField
            label={t("measured")}
            unit={t("mm")}
            value={props.millimetres}
            min={0.5}
            max={2000}
            step={0.5}
            optional
            onChange={props.onMillimetres}
          />
          <p className={plain.note}>{props.millimetres > 0 ? t("sameSize") : t("measuredNote")}</p>
        </div>
      )}
    </div>
  );
}
