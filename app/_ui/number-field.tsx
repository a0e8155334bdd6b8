"use client";

import { useFormatter, useTranslations } from "next-intl";
import { useState } from "react";
import { I18nProvider } from "react-aria-components/I18nProvider";
import {
  NumberField as AriaNumberField,
  Button,
  Group,
  Input,
  Label,
} from "react-aria-components/NumberField";
import { decimalComma } from "./decimal-comma.ts";
import styles from "./number-field.module.css";

type NumberFieldProps = {
  readonly label: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
  readonly min: number;
  readonly max: number;
  readonly step?: number;
  readonly unit?: string;
  /** May be left empty, which is NaN. */
  readonly optional?: boolean;
};

/**
 * A number that can be typed, stepped by buttons, or changed by the arrow and page keys. What lies beyond its limits
 * is brought to the nearer one, and said.
 */
export function NumberField(props: NumberFieldProps) {
  const { label, value, min, max, step = 1, unit, optional = false } = props;
  const t = useTranslations("bench");
  const format = useFormatter();
  const [corrected, setCorrected] = useState<{ readonly typed: number; readonly to: number } | null>(null);

  function change(typed: number) {
    if (Number.isNaN(typed)) {
      if (optional) props.onChange(typed);
      return;
    }
    const to = Math.min(Math.max(typed, min), max);
    setCorrected(to === typed ? null : { typed, to });
    props.onChange(to);
  }

  return (
    // The page is in British English whatever the browser speaks, so a point is the decimal sign.
    <I18nProvider locale="en-GB">
      <AriaNumberField
        className={styles.field ?? ""}
        value={value}
        onChange={change}
        minValue={min}
        maxValue={max}
        step={step}
        // The library would snap in silence.
        commitBehavior="validate"
        formatOptions={{ useGrouping: false, maximumFractionDigits: 3 }}
      >
        <Label>
          {label}
          {unit && <span className={styles.unit}>, {unit}</span>}
        </Label>
        <Group className={styles.group ?? ""} ref={decimalComma}>
          <Button slot="decrement" aria-label={t("less", { what: label })}>
            −
          </Button>
          <Input inputMode="decimal" />
          <Button slot="increment" aria-label={t("more", { what: label })}>
            +
          </Button>
        </Group>
        <p role="status" className={styles.corrected}>
          {corrected?.to === value &&
            t("corrected", {
              min: format.number(min),
              max: format.number(max),
              typed: format.number(corrected.typed, { maximumFractionDigits: 3 }),
            })}
        </p>
      </AriaNumberField>
    </I18nProvider>
  );
}
