"use client";

import { useTranslations } from "next-intl";
import type { Region } from "#core/photographs/region";
import { SMALLEST_REGION } from "#core/photographs/region";
import { NumberField } from "../number-field.tsx";
import { type Box, regionOf, type Size, shown, towards, turnedSize } from "./crop-geometry.ts";
import styles from "./cropping.module.css";

type CropNumbersProps = {
  readonly image: Size;
  readonly region: Region;
  readonly onRegion: (region: Region) => void;
};

/** The box as numbers, in pixels of the photograph as it is shown, from its left and top edges. */
export function CropNumbers({ image, region, onRegion }: CropNumbersProps) {
  const t = useTranslations("bench");
  const box = shown(region, image);
  const whole = turnedSize(image, region.turn);
  const change = (part: Partial<Box>) =>
    onRegion(towards(region, regionOf({ ...box, ...part }, image, region.turn), image));
  // Whatever the box is, is shown: a limit never hides where it truly lies.
  const field = (key: keyof Box, min: number, max: number) => (
    <NumberField
      label={t(`box.${key}`)}
      unit={t("pixels")}
      value={Math.round(box[key])}
      min={Math.min(min, Math.round(box[key]))}
      max={Math.max(Math.round(max), Math.round(box[key]))}
      onChange={(value) => change({ [key]: value })}
    />
  );
  return (
    <fieldset className={styles.numbers}>
      <legend>{t("numbers")}</legend>
      {field("x", 0, whole.width - box.width)}
      {field("y", 0, whole.height - box.height)}
      {field("width", SMALLEST_REGION, whole.width)}
      {field("height", SMALLEST_REGION, whole.height)}
    </fieldset>
  );
}
