import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import type { Interval } from "#core/dates/interval";
import { PeriodWords } from "../period-words.tsx";
import type { Axis } from "./axis.ts";
import { Ticks } from "./ticks.tsx";
import styles from "./time.module.css";
import { Track } from "./track.tsx";

export type TimeRow = {
  readonly key: string;
  readonly label: ReactNode;
  readonly note?: ReactNode;
  readonly period: Interval | null;
};

/** Periods one under the other on one axis, each with its words beside its bar: a table that is also a chart. */
export function TimeLine({
  rows,
  axis,
  caption,
}: {
  readonly rows: readonly TimeRow[];
  readonly axis: Axis | null;
  readonly caption: string;
}) {
  const t = useTranslations("time");
  return (
    <table className={styles.line}>
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{t("what")}</th>
          <th scope="col">{t("when")}</th>
          <th scope="col" className={styles.axis}>
            <span>{t("drawn")}</span>
            {axis && <Ticks axis={axis} />}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ key, label, note, period }) => (
          <tr key={key}>
            <th scope="row">
              {label}
              {note && <span className={styles.note}>{note}</span>}
            </th>
            <td className={styles.when}>
              <PeriodWords period={period} />
            </td>
            <td className={styles.drawn}>{axis && <Track period={period} axis={axis} />}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
