import { useFormatter, useTranslations } from "next-intl";
import { CIRCA_POLICY } from "#core/dates/circa-policy";
import { boundDate } from "#core/dating/bound-date";
import type { Estimate } from "#core/dating/estimate";
import type { Worksheet } from "#core/dating/worksheet";
import { wordYears } from "../dating/year-words.ts";
import plain from "../plain.module.css";
import { wordEdtf } from "../word-edtf.ts";
import styles from "./worksheet.module.css";

type EstimateProps = { readonly estimate: Estimate; readonly worksheet: Worksheet };
type Bounds = Estimate["undisputed"];

/** What contradicts what, by name; nothing when nothing does. */
export function Conflicts({ estimate, worksheet }: EstimateProps) {
  const t = useTranslations("worksheet");
  const names = useNames(worksheet);
  const { conflicts, outside } = estimate;
  if (conflicts.length === 0 && outside.length === 0) return null;
  return (
    <section aria-labelledby="conflicts" className={styles.conflicts}>
      <h2 id="conflicts">{t("conflicts")}</h2>
      {conflicts.length > 0 && (
        <>
          <ul>
            {conflicts.map((set) => (
              <li key={set.join()}>{t("conflict", { pieces: names(set) })}</li>
            ))}
          </ul>
          <p className={plain.note}>{t("conflictNote")}</p>
        </>
      )}
      {outside.length > 0 && <p>{t("outside", { pieces: names(outside), count: outside.length })}</p>}
    </section>
  );
}

/** Not before and not after, each with the pieces that set it. */
export function HardBounds({ estimate, worksheet }: EstimateProps) {
  const t = useTranslations("worksheet");
  const isDisputed = estimate.conflicts.length > 0;
  const bounds: Bounds = isDisputed ? estimate.undisputed : estimate;
  const hasNone = bounds.notBefore === null && bounds.notAfter === null;
  return (
    <section aria-labelledby="bounds">
      <h2 id="bounds">{t("bounds")}</h2>
      <p className={plain.note}>{isDisputed ? t("boundsDisputed") : t("boundsNote")}</p>
      {hasNone ? <p>{t("boundsNone")}</p> : <BoundLines bounds={bounds} worksheet={worksheet} />}
    </section>
  );
}

function BoundLines({ bounds, worksheet }: { readonly bounds: Bounds; readonly worksheet: Worksheet }) {
  const t = useTranslations("worksheet");
  const period = useTranslations("period");
  const names = useNames(worksheet);
  return (
    <ul>
      {(["notBefore", "notAfter"] as const).map((which) => {
        const bound = bounds[which];
        if (!bound) return null;
        const { day, evidenceIds } = bound;
        const said = boundDate(day, which === "notBefore" ? "first" : "last");
        const params = { day: wordEdtf(said, period), pieces: names(evidenceIds), count: evidenceIds.length };
        return <li key={which}>{t(which, params)}</li>;
      })}
    </ul>
  );
}

/** Which evidence that is not there yet would narrow the years most. */
export function WouldNarrow({ estimate }: { readonly estimate: Estimate }) {
  const t = useTranslations("worksheet");
  const format = useFormatter();
  return (
    <section aria-labelledby="narrow">
      <h2 id="narrow">{t("narrow")}</h2>
      <ol>
        {estimate.wouldNarrow.slice(0, 3).map(({ candidate, left }) => (
          <li key={candidate}>
            {t("narrowItem", {
              candidate: t(`candidates.${candidate as "receipt"}`),
              share: format.number(Math.round(left * 100)),
            })}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** What the estimate is not, and what was put into it that nobody measured. */
export function Cautions({ estimate }: { readonly estimate: Estimate }) {
  const t = useTranslations("worksheet");
  const period = useTranslations("period");
  const { from, to } = estimate.grid;
  const { year, decade, century } = CIRCA_POLICY.about;
  return (
    <section aria-labelledby="cautions" className={styles.cautions}>
      <h2 id="cautions">{t("cautions")}</h2>
      <ul className={plain.note}>
        <li>{t("cautionOpinion")}</li>
        <li>{t("cautionPrior", { from: wordYears(from, from, period), to: wordYears(to, to, period) })}</li>
        <li>{t("cautionModel")}</li>
        <li>{t("cautionAbout", { year, decade, century })}</li>
      </ul>
    </section>
  );
}

/** "piece 2 (patent or registered number) and piece 7 (letter or story)". */
function useNames({ pieces }: Worksheet): (ids: readonly string[]) => string {
  const t = useTranslations("worksheet");
  const format = useFormatter();
  return (ids) =>
    format.list(
      ids.map((id) => {
        const kind = pieces[Number(id) - 1]?.kind ?? "other";
        return t("pieceNamed", { place: id, kind: t(`kinds.${kind}`).toLowerCase() });
      }),
    );
}
