import { useFormatter, useTranslations } from "next-intl";
import type { ReactNode } from "react";
import { ALLOWANCES, CATALOGUE, type Making } from "#core/sizes/allowances";
import type { SizeEstimate, Step, UnderConvention } from "#core/sizes/estimate-size";
import plain from "../plain.module.css";
import styles from "./sizes.module.css";

type SizeAnswerProps = { readonly estimate: SizeEstimate; readonly making: Making };

/** Which size it is, for each way in which the catalogue may have measured; and what would settle it. */
export function SizeAnswer({ estimate, making }: SizeAnswerProps) {
  const t = useTranslations("sizesPage");
  const { under, verdict, toSettle } = estimate;
  return (
    <section aria-labelledby="answer" className={styles.answer}>
      <h2 id="answer">{t("result")}</h2>
      <ul className={styles.ifs}>
        {under.map((each) => (
          <li key={each.convention}>
            <Best under={each} />
          </li>
        ))}
      </ul>
      <p className={verdict === "conventions-disagree" ? styles.disagree : undefined}>
        {t(`verdicts.${verdict}`)}
      </p>
      {toSettle.length > 0 && (
        <>
          <h3>{t("settle")}</h3>
          <ul className={styles.steps}>
            {toSettle.map((step) => (
              <li key={step.step}>
                <StepWords step={step} />
              </li>
            ))}
          </ul>
        </>
      )}
      {under.length > 0 && <Chances under={under} />}
      <Allowances making={making} />
    </section>
  );
}

function Best({ under }: { readonly under: UnderConvention }) {
  const t = useTranslations("sizesPage");
  const inHundred = useShares();
  const { convention, sizes, none, best } = under;
  const chance = best ? (sizes.find(({ size }) => size === best)?.probability ?? 0) : none;
  const values = {
    strong: (chunks: ReactNode) => <strong>{chunks}</strong>,
    convention: t(`conventions.${convention}`),
    size: best?.name ?? "",
    share: inHundred(chance),
  };
  return <>{best ? t.rich("if", values) : t.rich("ifNone", values)}</>;
}

/** Never 0 or 100: neither is known. */
function useShares(): (chance: number) => string {
  const t = useTranslations("sizesPage");
  return (chance) => {
    if (chance > 0.99) return t("over", { share: 99 });
    return chance < 0.01 ? t("under", { share: 1 }) : String(Math.round(100 * chance));
  };
}

function StepWords({ step }: { readonly step: Step }) {
  const t = useTranslations("sizesPage");
  const format = useFormatter();
  if (step.step === "measure") return t("settleMeasure", { convention: t(`conventions.${step.convention}`) });
  const between = format.list(
    step.between.map((each) => t(`conventions.${each}`)),
    { type: "disjunction" },
  );
  return step.step === "find-convention"
    ? t("settleConvention", { between })
    : t("settleExample", { between });
}

function Chances({ under }: { readonly under: readonly UnderConvention[] }) {
  const t = useTranslations("sizesPage");
  const inHundred = useShares();
  const sizes = under[0]?.sizes.map(({ size }) => size) ?? [];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard
    <section className={styles.scroll} tabIndex={0} aria-label={t("table")}>
      <table className={styles.table}>
        <caption>{t("table")}</caption>
        <thead>
          <tr>
            <th scope="col">{t("size")}</th>
            {under.map(({ convention }) => (
              <th key={convention} scope="col">
                {t(`conventions.${convention}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sizes.map((size, i) => (
            <tr key={size.name}>
              <th scope="row">{size.name}</th>
              {under.map((each) => (
                <td key={each.convention}>{inHundred(each.sizes[i]?.probability ?? 0)}</td>
              ))}
            </tr>
          ))}
          <tr>
            <th scope="row">{t("noneOfThem")}</th>
            {under.map((each) => (
              <td key={each.convention}>{inHundred(each.none)}</td>
            ))}
          </tr>
        </tbody>
      </table>
    </section>
  );
}

function Allowances({ making }: { readonly making: Making }) {
  const t = useTranslations("sizesPage");
  const { smaller, varies } = ALLOWANCES[making];
  const values = { making: t(`makings.${making}`), smaller: 100 * smaller, varies: 100 * varies };
  return (
    <>
      <h3>{t("allowances")}</h3>
      <p className={plain.note}>
        {smaller > 0 ? t("allowance", values) : t("allowanceSame", values)}{" "}
        {t("allowanceRounding", { share: Math.round(1 / CATALOGUE.uncataloguedShare) })}
      </p>
    </>
  );
}
