import { useFormatter, useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import type { Piece, Worksheet } from "#core/dating/worksheet";
import plain from "../plain.module.css";
import { wordPiece } from "./piece-words.ts";
import { wordSpan } from "./range-words.ts";
import styles from "./worksheet.module.css";

type EstimateProps = { readonly estimate: Estimate; readonly worksheet: Worksheet };

/** The pieces in order of weight, each with its number, what the estimate would be without it, and its source. */
export function EstimateWhy({ estimate, worksheet }: EstimateProps) {
  const t = useTranslations("worksheet");
  const ordered = worksheet.pieces
    .map((piece, i) => ({ piece, place: i + 1, bits: estimate.weights[String(i + 1)] ?? 0 }))
    .sort((a, b) => b.bits - a.bits || a.place - b.place);
  return (
    <section aria-labelledby="why">
      <h2 id="why">{t("why")}</h2>
      <ol className={styles.reasons}>
        {ordered.map((each) => (
          <li key={each.place}>
            <Reason {...each} estimate={estimate} />
          </li>
        ))}
      </ol>
      <p className={plain.note}>{t("bitsNote")}</p>
    </section>
  );
}

/** Words for how much a piece tells, by bits; the number stands beside. */
function strengthOf(bits: number): "most" | "much" | "some" | "little" | "nothing" {
  if (bits >= 1.5) return "most";
  if (bits >= 0.5) return "much";
  if (bits >= 0.1) return "some";
  return bits >= 0.005 ? "little" : "nothing";
}

const asSentence = (words: string) => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

type ReasonProps = {
  readonly piece: Piece;
  readonly place: number;
  readonly bits: number;
  readonly estimate: Estimate;
};

function Reason({ piece, place, bits, estimate }: ReasonProps) {
  const t = useTranslations("worksheet");
  const period = useTranslations("period");
  const format = useFormatter();
  const without = estimate.without[String(place)];
  const years = Math.round(Math.abs(without?.shift ?? 0) * 10) / 10;
  const moved = (without?.shift ?? 0) > 0 ? "later" : "earlier";
  return (
    <>
      <p>
        {t.rich("reason", {
          strong: (chunks) => <strong>{chunks}</strong>,
          kind: t(`kinds.${piece.kind}`),
          place,
          strength: t(`strength.${strengthOf(bits)}`),
          bits: format.number(bits, { maximumFractionDigits: 2, minimumFractionDigits: 2 }),
          reason: piece.reason === "" ? asSentence(wordPiece(piece, t, period)) : piece.reason,
        })}
      </p>
      <p className={plain.note}>
        {without &&
          t("without", {
            span: wordSpan(without.interval95.from, without.interval95.to, t, period),
            moved: years < 0.1 ? "not" : moved,
            years,
          })}{" "}
        {piece.source ? t("source", { source: piece.source }) : t("noSource")}
      </p>
    </>
  );
}
