import { useFormatter, useTranslations } from "next-intl";
import { DIAMOND_SERIES, keysOf, lookUpDiamond } from "#core/decoding/diamond-table";
import styles from "./diamond.module.css";

/** Which letter stands for which year and month, to look at beside the object. */
export function DiamondLetters() {
  const t = useTranslations("decoders.diamond");
  const format = useFormatter();
  const [first, second] = DIAMOND_SERIES;
  const years = (letter: string) =>
    DIAMOND_SERIES.flatMap((series) => lookUpDiamond("year letter", letter, series)?.value ?? []);
  const month = (letter: string) =>
    format.dateTime(
      new Date(Date.UTC(2000, Number(lookUpDiamond("month letter", letter, first)?.value) - 1, 15)),
      {
        month: "long",
        timeZone: "UTC",
      },
    );
  return (
    <details className={styles.letters}>
      <summary>{t("letters")}</summary>
      <h3>{t("yearLetters")}</h3>
      <dl>
        {keysOf("year letter", first)
          .toSorted()
          .map((letter) => (
            <div key={letter}>
              <dt>{letter}</dt>
              <dd>{years(letter).join(", ")}</dd>
            </div>
          ))}
      </dl>
      <h3>{t("monthLetters")}</h3>
      <dl>
        {keysOf("month letter", second).map((letter) => (
          <div key={letter}>
            <dt>{letter}</dt>
            <dd>{month(letter)}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
