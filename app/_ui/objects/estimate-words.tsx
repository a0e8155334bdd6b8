import { useFormatter, useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import { BoundsWords } from "../dating/bounds-words.tsx";
import { wordYears } from "../dating/year-words.ts";

/** When it was probably made, and what the evidence leaves when taken at its word. */
export function EstimateWords({ estimate }: { readonly estimate: Estimate }) {
  const t = useTranslations("objectPages.overview");
  const period = useTranslations("period");
  const format = useFormatter();
  if (Object.keys(estimate.weights).length === 0) return <p>{t("noEvidence")}</p>;
  const years = format.list(
    estimate.shortest[95].ranges.map(({ from, to }) => wordYears(from, to, period)),
    { type: "disjunction" },
  );
  const isDisputed = estimate.conflicts.length > 0;
  return (
    <>
      <p>{t("estimate", { years })}</p>
      <p>
        {t(isDisputed ? "boundsDisputed" : "bounds")}{" "}
        <BoundsWords bounds={isDisputed ? estimate.undisputed : estimate} />
      </p>
    </>
  );
}
