import { useFormatter, useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import type { Evidence } from "#core/dating/evidence";
import type { Piece } from "#core/dating/piece";
import { type Reason, reasonsOf } from "#core/dating/reasons";
import type { Worksheet } from "#core/dating/worksheet";
import { wordYears } from "../dating/year-words.ts";
import plain from "../plain.module.css";
import { wordPiece } from "./piece-words.ts";
import styles from "./worksheet.module.css";

type EstimateWhyProps = {
  readonly estimate: Estimate;
  readonly evidence: readonly Evidence[];
  readonly worksheet: Worksheet;
};

/** The pieces in order of weight, each with its number, what the estimate would be without it, and its source. */
export function EstimateWhy({ estimate, evidence, worksheet }: EstimateWhyProps) {
  const t = useTranslations("worksheet");
  return (
    <section aria-labelledby="why">
      <h2 id="why">{t("why")}</h2>
      <ol className={styles.reasons}>
        {reasonsOf(estimate, evidence).map((reason) => {
          const piece = worksheet.pieces[Number(reason.evidenceId) - 1];
          return (
            piece && (
              <li key={reason.evidenceId}>
                <ReasonWords
                  reason={reason}
                  piece={piece}
                  shift={estimate.without[reason.evidenceId]?.shift ?? 0}
                />
              </li>
            )
          );
        })}
      </ol>
    </section>
  );
}

const asSentence = (words: string) => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

type ReasonWordsProps = { readonly reason: Reason; readonly piece: Piece; readonly shift: number };

function ReasonWords({ reason, piece, shift }: ReasonWordsProps) {
  const t = useTranslations("worksheet");
  const dating = useTranslations("dating");
  const period = useTranslations("period");
  const format = useFormatter();
  const { bits, from, to } = reason.params;
  const years = Math.round(Math.abs(shift) * 10) / 10;
  return (
    <>
      <p>
        {t.rich("reason", {
          strong: (chunks) => <strong>{chunks}</strong>,
          kind: t(`kinds.${piece.kind}`),
          place: reason.evidenceId,
          strength: dating(`strength.${reason.strength}`),
          bits: format.number(bits, { maximumFractionDigits: 2, minimumFractionDigits: 2 }),
          reason: piece.reason === "" ? asSentence(wordPiece(piece, t, period)) : piece.reason,
        })}
      </p>
      <p className={plain.note}>
        {t("without", {
          span: wordYears(from, to, period),
          moved: years < 0.1 ? "not" : shift > 0 ? "later" : "earlier",
          years,
        })}{" "}
        {piece.source ? t("source", { source: piece.source }) : t("noSource")}
      </p>
    </>
  );
}
