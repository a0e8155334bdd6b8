"use client";

import { useFormatter, useTranslations } from "next-intl";
import type { Photograph } from "#core/photographs/photograph";
import styles from "./viewer.module.css";

const LENGTHS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];
/** The bar is the longest that takes no more than this part of the photograph's width. */
const LARGEST_PART = 0.34;

/** A bar of so many millimetres at the size the photograph is shown now. */
export function ScaleBar({ photograph, scale }: { readonly photograph: Photograph; readonly scale: number }) {
  const t = useTranslations("viewer");
  const format = useFormatter();
  if (photograph.pixelsPerMm === null) return <p className={styles.scale}>{t("noScale")}</p>;
  const partOfOneMm = (photograph.pixelsPerMm * scale) / photograph.width;
  const mm = LENGTHS.findLast((each) => each * partOfOneMm <= LARGEST_PART) ?? LENGTHS[0] ?? 1;
  return (
    <p
      className={styles.scale}
      style={{ "--shape": photograph.width / photograph.height } as React.CSSProperties}
    >
      <svg width={`${100 * mm * partOfOneMm}%`} height="8" aria-hidden="true" focusable="false">
        <rect x="0.5" y="0.5" width="99%" height="7" fill="none" stroke="currentColor" />
        <rect x="0" y="1" width="25%" height="6" fill="currentColor" />
        <rect x="50%" y="1" width="25%" height="6" fill="currentColor" />
      </svg>
      <span>{t("millimetres", { mm: format.number(mm) })}</span>
    </p>
  );
}
