"use client";

import { useTranslations } from "next-intl";
import plain from "../plain.module.css";
import { Slider } from "../slider.tsx";
import styles from "./compare.module.css";
import { MODES, type Mode } from "./modes.ts";
import type { Blink } from "./use-blink.ts";
import type { LinkedZoom } from "./use-linked-zoom.ts";

type CompareToolsProps = {
  readonly mode: Mode;
  readonly onMode: (mode: Mode) => void;
  readonly wipe: number;
  readonly onWipe: (wipe: number) => void;
  readonly blink: Blink;
  readonly zoom: LinkedZoom;
};

/** How the two photographs lie, and how near. */
export function CompareTools(props: CompareToolsProps) {
  const t = useTranslations("compare");
  const { mode, blink, zoom, wipe } = props;
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
    </div>
  );
}
