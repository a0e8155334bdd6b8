"use client";

import { useTranslations } from "next-intl";
import { useControls } from "react-zoom-pan-pinch";
import styles from "./viewer.module.css";

/** Nearer, farther, whole; and in words what the keys do. */
export function ZoomButtons() {
  const t = useTranslations("viewer");
  const { zoomIn, zoomOut, resetTransform } = useControls();
  return (
    <div className={styles.tools}>
      <button type="button" onClick={() => zoomIn(0.5)} aria-label={t("nearer")}>
        <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
          <path d="M9 3v12M3 9h12" stroke="currentColor" strokeWidth="1.6" />
        </svg>
      </button>
      <button type="button" onClick={() => zoomOut(0.5)} aria-label={t("farther")}>
        <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
          <path d="M3 9h12" stroke="currentColor" strokeWidth="1.6" />
        </svg>
      </button>
      <button type="button" onClick={() => resetTransform(120)}>
        {t("whole")}
      </button>
      <p id="zoom-keys" className={styles.keys}>
        <span>{t("keys")}</span>
        <span>{t("fingers")}</span>
      </p>
    </div>
  );
}
