"use client";

import { useTranslations } from "next-intl";
import {
  NumberField as AriaNumberField,
  Button,
  Group,
  Input,
  Label,
} from "react-aria-components/NumberField";
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

/** A number that can be typed, stepped by buttons, or changed by the arrow and page keys. */
export function NumberField({
  label,
  value,
  onChange,
  min,
  max,
  step = 1,
  unit,
  optional = false,
}: NumberFieldProps) {
  const t = useTranslations("bench");
  return (
    <AriaNumberField
      className={styles.field ?? ""}
      value={value}
      onChange={(next) => (optional || Number.isFinite(next)) && onChange(next)}
      minValue={min}
      maxValue={max}
      step={step}
      formatOptions={{ useGrouping: false, maximumFractionDigits: 1 }}
    >
      <Label>
        {label}
        {unit && <span className={styles.unit}>, {unit}</span>}
      </Label>
      <Group className={styles.group ?? ""}>
        <Button slot="decrement" aria-label={t("less", { what: label })}>
          −
        </Button>
        <Input />
        <Button slot="increment" aria-label={t("more", { what: label })}>
          +
        </Button>
      </Group>
    </AriaNumberField>
  );
}
