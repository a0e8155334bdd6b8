import type { Metadata } from "next";
import Link from "next/link";
import { getFormatter, getTranslations } from "next-intl/server";
import type { ReactNode } from "react";
import type { Calibration } from "#core/similarity/calibration";
import { MeasuredTable } from "#ui/how-sure/measured-table";
import { ReliabilityDiagram } from "#ui/how-sure/reliability-diagram";
import { ReliabilityTable } from "#ui/how-sure/reliability-table";
import { WhatWordsMean } from "#ui/how-sure/what-words-mean";
import { calibrationFor } from "#web/reading";
import plain from "../../_ui/plain.module.css";
import styles from "./how-sure-page.module.css";

const LIMITS = ["real", "kinds", "twins", "prior", "known"] as const;

type Props = { readonly searchParams: Promise<{ readonly model?: string | string[] }> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("howSure");
  return { title: t("title") };
}

export default async function HowSurePage({ searchParams }: Props) {
  const { model: asked } = await searchParams;
  const [t, { model, calibration }] = await Promise.all([
    getTranslations("howSure"),
    calibrationFor(typeof asked === "string" ? asked : null),
  ]);
  return (
    <article className={styles.page}>
      <h1>{t("title")}</h1>
      {calibration ? (
        <Calibrated calibration={calibration} />
      ) : (
        <p className={styles.lede}>{t("notCalibrated", { model })}</p>
      )}
      <p>
        <Link href="/about">{t("back")}</Link>
      </p>
    </article>
  );
}

async function Calibrated({ calibration }: { readonly calibration: Calibration }) {
  const [t, format] = await Promise.all([getTranslations("howSure"), getFormatter()]);
  const { model, date, fittedOn, measured, reliability } = calibration;
  const first = measured[0];
  return (
    <>
      <p className={styles.lede}>{t("lede")}</p>
      <section aria-labelledby="diagram">
        <h2 id="diagram">{t("diagramHeading")}</h2>
        {first && <p>{t("diagramOf", { on: first.on, count: first.present + first.absent })}</p>}
        <ReliabilityDiagram bins={reliability} across={t("said")} upwards={t("right")} />
        <p className={plain.note}>{t("diagramNote")}</p>
        <Scroller label={t("tableCaption")}>
          <ReliabilityTable bins={reliability} />
        </Scroller>
      </section>
      <section aria-labelledby="figures">
        <h2 id="figures">{t("figuresHeading")}</h2>
        <p>{t("figuresNote")}</p>
        <Scroller label={t("figuresHeading")}>
          <MeasuredTable rows={measured} />
        </Scroller>
      </section>
      <section aria-labelledby="words">
        <h2 id="words">{t("wordsHeading")}</h2>
        <p>{t("wordsNote")}</p>
        <WhatWordsMean />
      </section>
      <section aria-labelledby="limits">
        <h2 id="limits">{t("limitsHeading")}</h2>
        <ul className={styles.list}>
          {LIMITS.map((limit) => (
            <li key={limit}>{t(`limits.${limit}`)}</li>
          ))}
        </ul>
      </section>
      <section aria-labelledby="facts">
        <h2 id="facts">{t("facts")}</h2>
        <dl className={styles.facts}>
          <div>
            <dt>{t("date")}</dt>
            <dd>
              <time dateTime={date}>
                {format.dateTime(new Date(`${date}T12:00:00Z`), { dateStyle: "long", timeZone: "UTC" })}
              </time>
            </dd>
          </div>
          <div>
            <dt>{t("model")}</dt>
            <dd>{model}</dd>
          </div>
          <div>
            <dt>{t("fittedOn")}</dt>
            <dd>{t("fitted", { ...fittedOn })}</dd>
          </div>
        </dl>
      </section>
    </>
  );
}

/** A wide table scrolls by itself on a narrow screen, also with the keyboard. */
function Scroller({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable without a mouse
    <section className={styles.scroller} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
