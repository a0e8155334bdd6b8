import { useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import type { Evidence } from "#core/dating/evidence";
import { reasonsOf } from "#core/dating/reasons";
import { yearsShown } from "#core/dating/years-shown";
import { type Axis, axisFrom } from "../time/axis.ts";
import { Ticks } from "../time/ticks.tsx";
import { BoundsTrack } from "./bounds-track.tsx";
import { BoundsWords } from "./bounds-words.tsx";
import styles from "./dating.module.css";
import { Distribution } from "./distribution.tsx";
import { DistributionTable } from "./distribution-table.tsx";
import { PieceRow } from "./piece-row.tsx";
import { RangesWords } from "./ranges-words.tsx";

type DateChartProps = {
  readonly estimate: Estimate;
  readonly evidence: readonly Evidence[];
  /** What each piece is called, by its id. */
  readonly labels: Readonly<Record<string, string>>;
  /** Where the page gives each piece's numbers beside its reason, the chart need not. */
  readonly brief?: boolean;
};

/**
 * When it was made, on one axis of years: how likely each year is, what the pieces leave when taken at their word, and
 * each piece with its window, in order of what it tells. It is a table, so that it is read without the drawings too.
 */
export function DateChart({ estimate, evidence, labels, brief = false }: DateChartProps) {
  const t = useTranslations("dating");
  const shown = yearsShown(estimate, evidence);
  const axis = axisFrom(shown.from, shown.to, 6);
  return (
    <div className={styles.chart}>
      <table className={styles.table}>
        <caption>{t("caption")}</caption>
        <colgroup>
          <col className={styles.whatColumn} />
          <col className={styles.whenColumn} />
          <col />
        </colgroup>
        <thead>
          <tr>
            <th scope="col">{t("what")}</th>
            <th scope="col">{t("when")}</th>
            <th scope="col">{t("drawn")}</th>
          </tr>
        </thead>
        <tbody>
          <Made estimate={estimate} axis={axis} />
          <AtTheirWord estimate={estimate} axis={axis} />
          {reasonsOf(estimate, evidence).map((reason) => {
            const piece = evidence.find(({ id }) => id === reason.evidenceId);
            return piece && <PieceRow key={piece.id} {...{ piece, reason, labels, axis, brief }} />;
          })}
        </tbody>
      </table>
      <p className={styles.key}>{t("key")}</p>
      <DistributionTable estimate={estimate} shown={shown} />
    </div>
  );
}

type RowProps = { readonly estimate: Estimate; readonly axis: Axis };

function Made({ estimate, axis }: RowProps) {
  const t = useTranslations("dating");
  return (
    <tr className={styles.made}>
      <th scope="row">{t("made")}</th>
      <td className={styles.when}>
        <RangesWords estimate={estimate} />
      </td>
      <td className={styles.drawn}>
        <Distribution estimate={estimate} axis={axis} />
        <Ticks axis={axis} />
      </td>
    </tr>
  );
}

/** Where pieces contradict each other, by what nothing contradicts. */
function AtTheirWord({ estimate, axis }: RowProps) {
  const t = useTranslations("dating");
  const isDisputed = estimate.conflicts.length > 0;
  const bounds = isDisputed ? estimate.undisputed : estimate;
  return (
    <tr>
      <th scope="row">
        {t("atWord")}
        <span className={styles.note}>{t(isDisputed ? "atWordDisputed" : "atWordNote")}</span>
      </th>
      <td className={styles.when}>
        <BoundsWords bounds={bounds} />
      </td>
      <td className={styles.drawn}>
        <BoundsTrack bounds={bounds} axis={axis} />
      </td>
    </tr>
  );
}
