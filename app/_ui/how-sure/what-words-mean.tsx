import { useTranslations } from "next-intl";
import { percentOf, SURE_FROM, SURENESSES } from "#core/similarity/sureness";
import styles from "./how-sure.module.css";

/** From which number each word is used, and why. */
export function WhatWordsMean() {
  const t = useTranslations("howSure");
  const rows = [
    ...SURENESSES.map((word) => ({ word, percent: percentOf(SURE_FROM[word]) })),
    { word: "unclaimed" as const, percent: 0 },
    { word: "noneFits" as const, percent: 0 },
  ];
  return (
    <dl className={styles.facts}>
      {rows.map(({ word, percent }) => (
        <div key={word}>
          <dt>{t(`word.${word}`)}</dt>
          <dd>{t(`meaning.${word}`, { percent })}</dd>
        </div>
      ))}
    </dl>
  );
}
