"use client";

import {
  Slider as AriaSlider,
  Label,
  SliderOutput,
  SliderThumb,
  SliderTrack,
} from "react-aria-components/Slider";
import styles from "./slider.module.css";

type SliderProps = {
  readonly label: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
  readonly min: number;
  readonly max: number;
  readonly step?: number;
  readonly words: (value: number) => string;
  /** A place on the scale to mark, such as the middle. */
  readonly origin?: number;
};

/** One value on a drawn scale, by pointer, touch or keys; its words stand beside its name. */
export function Slider({ label, value, onChange, min, max, step = 1, words, origin }: SliderProps) {
  return (
    <AriaSlider
      className={styles.slider ?? ""}
      value={value}
      onChange={(next) => onChange(Array.isArray(next) ? (next[0] ?? value) : next)}
      minValue={min}
      maxValue={max}
      step={step}
    >
      <Label>{label}</Label>
      <SliderOutput>{() => words(value)}</SliderOutput>
      <SliderTrack className={styles.track ?? ""}>
        {origin !== undefined && (
          <span className={styles.origin} style={{ left: `${(100 * (origin - min)) / (max - min)}%` }} />
        )}
        <SliderThumb className={styles.thumb ?? ""} />
      </SliderTrack>
    </AriaSlider>
  );
}
