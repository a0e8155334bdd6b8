import { useTranslations } from "next-intl";
import { pieceOfEntry } from "#core/dating/entry-statement";
import { addressOf, EMPTY_WORKSHEET } from "#core/dating/worksheet";
import type { EntrySummary } from "#core/entries/entry";
import { wordPeriod } from "../period-words.tsx";
import plain from "../plain.module.css";

type DateByLinkProps = {
  readonly entry: Pick<EntrySummary, "slug" | "title" | "kind" | "state" | "period">;
  readonly className?: string | undefined;
  /** Where a look-up found it: how likely it is the one. */
  readonly probability?: number;
};

/** Puts an entry's period of use on a worksheet, in one step; nothing when it has none. */
export function DateByLink({ entry, className, probability }: DateByLinkProps) {
  const t = useTranslations("worksheet");
  const period = useTranslations("period");
  const states = useTranslations("states");
  if (!entry.period) return null;
  const { title, slug, state } = entry;
  const when = wordPeriod(entry.period, period);
  const reason =
    probability === undefined
      ? t("entryReason", { title, when })
      : t("entryReasonLikely", { title, when, share: Math.round(100 * probability) });
  const source = t("entrySource", { slug, state: states(state) });
  const piece = pieceOfEntry(entry, { reason: reason.slice(0, 300), source }, probability);
  if (!piece) return null;
  return (
    <a href={addressOf({ ...EMPTY_WORKSHEET, pieces: [piece] })} className={className} rel="nofollow">
      {t("dateBy")}
      <span className={plain.hidden}>{t("dateByWhich", { title })}</span>
    </a>
  );
}
