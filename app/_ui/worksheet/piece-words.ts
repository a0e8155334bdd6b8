import type { useTranslations } from "next-intl";
import type { Piece } from "#core/dating/piece";
import { RELIABILITIES } from "#core/dating/usual-evidence";
import { wordEdtf } from "../word-edtf.ts";

export type SheetWords = ReturnType<typeof useTranslations<"worksheet">>;
type PeriodWordsOf = Parameters<typeof wordEdtf>[1];

/** "it was marked: 1903 to 1912", with the other dates that may be meant instead. */
export function wordPiece(
  { event, edtf, alternatives }: Piece,
  t: SheetWords,
  period: PeriodWordsOf,
): string {
  const when = [edtf, ...alternatives]
    .map((each) => wordEdtf(each, period))
    .reduce((first, second) => t("pieceOr", { first, second }));
  return t("pieceWhen", { event: t(`events.${event}`), when });
}

/** How far a piece can be trusted: the word of the nearest step, and its number. */
export function wordTrust(reliability: number, t: SheetWords): string {
  const nearest = RELIABILITIES.reduce((a, b) =>
    Math.abs(b - reliability) < Math.abs(a - reliability) ? b : a,
  );
  const words = t(`sureness.${String(Math.round(nearest * 1000)) as "950"}`);
  const thousandths = Math.round(reliability * 1000);
  return thousandths % 10 === 0
    ? t("trustHundred", { words, share: thousandths / 10 })
    : t("trust", { words, share: thousandths });
}
