"use client";

import { useTranslations } from "next-intl";
import type { Photograph } from "#core/photographs/photograph";
import { Cut } from "../cut.tsx";
import styles from "./compare.module.css";

type OtherPhotographsProps = {
  readonly photographs: readonly Photograph[];
  readonly index: number;
  readonly onIndex: (index: number) => void;
};

/** The entry's other photographs, each a press away from being the one compared with. */
export function OtherPhotographs({ photographs, index, onIndex }: OtherPhotographsProps) {
  const t = useTranslations("compare");
  if (photographs.length < 2) return null;
  return (
    <div className={styles.others}>
      <h2>{t("others")}</h2>
      <ul>
        {photographs.map((photograph, i) => (
          <li key={photograph.id}>
            <button type="button" aria-pressed={i === index} onClick={() => onIndex(i)}>
              <Cut
                image={photograph}
                alt={t("other", { n: i + 1, count: photographs.length })}
                shownAt={120}
              />
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
