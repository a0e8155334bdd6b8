"use client";

import { useTranslations } from "next-intl";
import { Cut, type Cuttable } from "../cut.tsx";
import styles from "./compare.module.css";

type OtherPhotographsProps = {
  readonly heading: string;
  readonly photographs: readonly { readonly image: Cuttable; readonly id: string }[];
  readonly index: number;
  readonly onIndex: (index: number) => void;
};

/** Other photographs of one side, each a press away from being the one compared. */
export function OtherPhotographs({ heading, photographs, index, onIndex }: OtherPhotographsProps) {
  const t = useTranslations("compare");
  if (photographs.length < 2) return null;
  return (
    <div className={styles.others}>
      <h2>{heading}</h2>
      <ul>
        {photographs.map(({ image, id }, i) => (
          <li key={id}>
            <button type="button" aria-pressed={i === index} onClick={() => onIndex(i)}>
              <Cut image={image} alt={t("other", { n: i + 1, count: photographs.length })} shownAt={120} />
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
