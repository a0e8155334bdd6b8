"use client";

import { useTranslations } from "next-intl";
import { NumberField } from "../number-field.tsx";
import plain from "../plain.module.css";
import { Slider } from "../slider.tsx";
import { wayAndSize } from "../way-and-size.ts";
import styles from "./compare.module.css";

type FineToolsProps = {
  readonly turn: number;
  /** Degrees clockwise at which the look-up found the likeness. */
  readonly matched: number;
  readonly onTurn: (turn: number) => void;
  readonly millimetres: number;
  readonly onMillimetres: (millimetres: number) => void;
  /** Between which sizes the measured one may lie; null when the photograph's scale is not known. */
  readonly plausible: { readonly min: number; readonly max: number } | null;
};

/** How one's own photograph is turned, and at which size both are shown. */
export function FineTools(props: FineToolsProps) {
  const t = useTranslations("compare");
  const { turn } = props;
  return (
    <div className={styles.tools}>
      <div className={styles.control}>
        <Slider
          label={t("turn")}
          value={turn}
          min={-180}
          max={180}
          origin={props.matched > 180 ? props.matched - 360 : props.matched}
          onChange={props.onTurn}
          words={(degrees) => t("degrees", wayAndSize(degrees))}
        />
      </div>
      {props.plausible && (
        <div className={styles.size}>
          <NumberField
            label={t("measured")}
            unit={t("mm")}
            value={props.millimetres}
            min={props.plausible.min}
            max={props.plausible.max}
            step={0.5}
            optional
            onChange={props.onMillimetres}
          />
          <p className={plain.note}>
            {props.millimetres > 0 ? t("sameSize") : t("measuredNote", props.plausible)}
          </p>
        </div>
      )}
    </div>
  );
}
