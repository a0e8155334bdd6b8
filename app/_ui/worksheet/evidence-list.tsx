import { useTranslations } from "next-intl";
import { withoutPieceAt } from "#core/dating/answer-worksheet-form";
import type { Piece } from "#core/dating/piece";
import { type Worksheet, worksheetQuery } from "#core/dating/worksheet";
import plain from "../plain.module.css";
import { wordPiece, wordTrust } from "./piece-words.ts";
import styles from "./worksheet.module.css";

type EvidenceListProps = {
  readonly worksheet: Worksheet;
  readonly onRemove: (place: number) => void;
  readonly onEdit: (place: number) => void;
};

/** What was put down, piece by piece; each can be changed and removed, by its address without scripts. */
export function EvidenceList({ worksheet, onRemove, onEdit }: EvidenceListProps) {
  const t = useTranslations("worksheet");
  if (worksheet.pieces.length === 0) return <p className={plain.note}>{t("none")}</p>;
  return (
    <ol className={styles.pieces}>
      {worksheet.pieces.map((piece, i) => (
        <li key={i}>
          <PieceWords piece={piece} place={i + 1} />
          <p className={styles.acts}>
            <a
              href={`/dates?${worksheetQuery(worksheet)}&edit=${i + 1}#form`}
              aria-label={t("changePiece", { place: i + 1 })}
              onClick={(event) => {
                event.preventDefault();
                onEdit(i + 1);
              }}
            >
              {t("changeLink")}
            </a>
            <a
              href={`/dates?${worksheetQuery(withoutPieceAt(worksheet, i + 1))}#evidence`}
              aria-label={t("removePiece", { place: i + 1 })}
              onClick={(event) => {
                event.preventDefault();
                onRemove(i + 1);
              }}
            >
              {t("removeLink")}
            </a>
          </p>
        </li>
      ))}
    </ol>
  );
}

function PieceWords({ piece, place }: { readonly piece: Piece; readonly place: number }) {
  const t = useTranslations("worksheet");
  const period = useTranslations("period");
  const { source, basis } = piece;
  return (
    <>
      <h3>{t("piece", { place, kind: t(`kinds.${piece.kind}`) })}</h3>
      <p className={styles.when}>{wordPiece(piece, t, period)}</p>
      {piece.reason && <p>{piece.reason}</p>}
      {piece.exceptions && <p>{t("exceptions", { exceptions: piece.exceptions })}</p>}
      <p className={plain.note}>
        {wordTrust(piece.reliability, t)}. {source ? t("source", { source }) : t("noSource")}
        {basis && ` (${t(`bases.${basis}`)})`}
        {piece.group && ` ${t("grouped", { group: piece.group })}`}
      </p>
    </>
  );
}
