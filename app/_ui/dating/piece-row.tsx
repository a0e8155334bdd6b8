import { useFormatter, useTranslations } from "next-intl";
import type { Evidence } from "#core/dating/evidence";
import type { Reason } from "#core/dating/reasons";
import { periodsOf } from "#core/dating/window";
import { wordPeriod } from "../period-words.tsx";
import type { Axis } from "../time/axis.ts";
import styles from "./dating.module.css";
import { PieceTrack } from "./piece-track.tsx";
import { wordYears } from "./year-words.ts";

type PieceRowProps = {
  readonly piece: Evidence;
  readonly reason: Reason;
  readonly labels: Readonly<Record<string, string>>;
  readonly axis: Axis;
  readonly brief: boolean;
};

/** One piece: what it is, what it says of the making, when, and its window; beside it what it contradicts. */
export function PieceRow({ piece, reason, labels, axis, brief }: PieceRowProps) {
  const t = useTranslations("dating");
  const period = useTranslations("period");
  const format = useFormatter();
  const { bits, reliability, from, to } = reason.params;
  const called = (id: string) => labels[id] ?? id;
  return (
    <tr>
      <th scope="row">
        {called(piece.id)}
        <span className={styles.note}>{t(`model.${reason.model}`)}</span>
        {!brief && (
          <span className={styles.note}>
            {t("numbers", {
              strength: t(`strength.${reason.strength}`),
              bits: format.number(bits, { minimumFractionDigits: 2, maximumFractionDigits: 2 }),
              reliability: format.number(reliability, { maximumFractionDigits: 1 }),
              without: wordYears(from, to, period),
            })}
          </span>
        )}
        {reason.against.length > 0 && (
          <span className={styles.against}>
            {t("against", { pieces: format.list(reason.against.map(called)) })}
          </span>
        )}
      </th>
      <td className={styles.when}>
        {format.list(
          periodsOf(piece).map((each) => wordPeriod(each, period)),
          { type: "disjunction" },
        )}
      </td>
      <td className={styles.drawn}>
        <PieceTrack piece={piece} axis={axis} />
      </td>
    </tr>
  );
}
