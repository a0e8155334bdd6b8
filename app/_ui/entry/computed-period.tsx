import { useTranslations } from "next-intl";
import type { Interval } from "#core/dates/interval";
import type { Citation } from "#core/entries/citation";
import { type ComputedPeriod, computePeriod } from "#core/entries/computed-period";
import { PeriodWords } from "../period-words.tsx";
import { axisOver } from "../time/axis.ts";
import { Ticks } from "../time/ticks.tsx";
import { Track } from "../time/track.tsx";
import { wordEdtf } from "../word-edtf.ts";
import styles from "./entry.module.css";

type ComputedProps = { readonly stated: Interval | null; readonly citations: readonly Citation[] };

/**
 * The stated period of use on the page's axis, and under it what the dated pieces show, computed from as many as it
 * says; and where the two disagree.
 */
export function PeriodDrawn({ stated, citations }: ComputedProps) {
  const t = useTranslations("computedPeriod");
  const computed = computePeriod(citations, stated);
  const axis = axisOver([stated, computed?.shown ?? null], 6);
  return (
    <>
      {axis && (
        <div className={styles.axis}>
          <Ticks axis={axis} />
          <Track period={stated} axis={axis} />
          {computed?.shown && (
            <>
              <p className={styles.trackNote}>{t("drawn")}</p>
              <Track period={computed.shown} axis={axis} />
            </>
          )}
        </div>
      )}
      {computed && <ComputedWords computed={computed} />}
    </>
  );
}

function ComputedWords({ computed }: { readonly computed: ComputedPeriod }) {
  const t = useTranslations("computedPeriod");
  const period = useTranslations("period");
  const { pieces, shown, notBefore, notAfter, disagreements, contradictions } = computed;
  const year = (bound: number) => wordEdtf(String(bound).padStart(4, "0"), period);
  return (
    <>
      <p>
        {t("from", { count: pieces })}{" "}
        {shown && (
          <>
            {t("shown")}{" "}
            <strong className={styles.period}>
              <PeriodWords period={shown} />
            </strong>
            .{" "}
          </>
        )}
        {notBefore !== null && `${t("notBefore", { year: year(notBefore) })} `}
        {notAfter !== null && t("notAfter", { year: year(notAfter) })}
      </p>
      {disagreements.length + contradictions.length > 0 && (
        <ul className={styles.sources}>
          {disagreements.map(({ citation, is }, i) => (
            <li key={i}>
              {t(`disagrees.${is}`, {
                title: citation.title,
                date: citation.dated ? wordEdtf(citation.dated.edtf, period) : "",
              })}
            </li>
          ))}
          {contradictions.map(([a, b], i) => (
            <li key={`c${i}`}>{t("contradict", { use: a.title, bound: b.title })}</li>
          ))}
        </ul>
      )}
    </>
  );
}
