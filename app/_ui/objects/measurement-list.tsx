import { useFormatter, useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import type { FileMeasurement } from "#core/object-files/object-file";
import { typedItem } from "#core/object-files/typed-item";
import plain from "../plain.module.css";
import { type RefusedItem, stateOf } from "./item-form.tsx";
import { MeasurementForm } from "./measurement-form.tsx";
import { More } from "./more.tsx";
import styles from "./objects.module.css";
import { RemoveItem } from "./remove-item.tsx";

type MeasurementListProps = {
  readonly kept: KeptFile;
  readonly refused: RefusedItem;
  readonly mayChange: boolean;
};

/** Every measure, how it was taken, and how far off it may be. */
export function MeasurementList({ kept, refused, mayChange }: MeasurementListProps) {
  const t = useTranslations("objectPages");
  const say = useMeasureWords();
  const { measurements } = kept.content;
  if (measurements.length === 0) return <p>{t("measure.none")}</p>;
  return (
    <ul className={styles.list}>
      {measurements.map((each) => {
        const state = stateOf(refused, "measurement", each.id, typedMeasure(each));
        return (
          <li key={each.id}>
            <p className={plain.figures}>{say(each)}</p>
            <p className={plain.note}>
              {[
                each.base === "no base" ? "" : t(`bases.${each.base}`),
                each.onScreen ? t("measure.fromScreen") : t("measure.typedAs", { typed: each.typed }),
                each.note,
              ]
                .filter((words) => words !== "")
                .join(". ")}
            </p>
            {mayChange && (
              <div className={styles.buttons}>
                {!each.onScreen && (
                  <More words={t("change")} isOpen={state.given}>
                    <MeasurementForm kept={kept} state={state} isThere />
                  </More>
                )}
                <RemoveItem kept={kept} list="measurements" id={each.id} part="measure" about={say(each)} />
              </div>
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** A measurement in a line: "Length, hull: 245 mm, within 1 mm". */
export function useMeasureWords(): (measurement: FileMeasurement) => string {
  const t = useTranslations("objectPages");
  const format = useFormatter();
  const figure = (value: number) => format.number(value, { maximumFractionDigits: 1 });
  return ({ measured, part, amount, within }) =>
    t("measure.says", {
      measured: t(`measured.${measured}`),
      part: part || "none",
      amount: figure(amount),
      within: figure(within),
      unit: measured === "weight" ? "g" : "mm",
    });
}

/** As it was typed, with how far off it may be in the same unit left for the person to say again. */
const typedMeasure = (each: FileMeasurement) => ({
  ...typedItem(each),
  amount: each.typed || `${each.amount} ${each.measured === "weight" ? "g" : "mm"}`,
  within: "",
});
