"use client";

import { useTranslations } from "next-intl";
import { useState } from "react";
import type { Photograph } from "#core/photographs/photograph";
import type { Region } from "#core/photographs/region";
import styles from "./compare.module.css";
import { CompareTools } from "./compare-tools.tsx";
import { FineTools } from "./fine-tools.tsx";
import { Layer } from "./layer.tsx";
import { LinkedPane } from "./linked-pane.tsx";
import { MODES, type Mode } from "./modes.ts";
import { OtherPhotographs } from "./other-photographs.tsx";
import { plausibleMm, realSizeRatio } from "./real-size.ts";
import { useBlink } from "./use-blink.ts";
import { useLinkedZoom } from "./use-linked-zoom.ts";

type Query = {
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly region: Region;
};
type ComparisonProps = {
  readonly query: Query;
  readonly photographs: readonly Photograph[];
  readonly start: number;
  readonly title: string;
  /** Degrees clockwise that brought the query onto the photograph. */
  readonly turn: number;
};

/**
 * Two photographs under one glass. Both panes always exist and move together; the modes only lay them side by side
 * or one over the other.
 */
export function Comparison({ query, photographs, start, title, turn: matched }: ComparisonProps) {
  const t = useTranslations("compare");
  const [index, setIndex] = useState(start);
  const [mode, setMode] = useState<Mode>(MODES[0]);
  const [turn, setTurn] = useState(matched > 180 ? matched - 360 : matched);
  const [wipe, setWipe] = useState(50);
  const [millimetres, setMillimetres] = useState(Number.NaN);
  const zoom = useLinkedZoom();
  const blink = useBlink(mode === "blink");
  const photograph = photographs[index] ?? photographs[0];
  if (!photograph) return null;

  const ratio = realSizeRatio(query.region, photograph, millimetres);
  const over =
    mode === "wipe" ? { clipPath: `inset(0 ${100 - wipe}% 0 0)` } : { opacity: blink.second ? 0 : 1 };
  return (
    <section className={styles.comparison} aria-label={t("label")}>
      <CompareTools mode={mode} onMode={setMode} wipe={wipe} onWipe={setWipe} blink={blink} zoom={zoom} />
      <div className={styles.panes} data-mode={mode}>
        <figure className={styles.query} style={mode === "side" ? {} : over}>
          <LinkedPane zoom={zoom} side="query" label={t("paneQuery")} focusable={mode === "side"}>
            <Layer image={query} alt={t("altQuery")} turn={turn} />
          </LinkedPane>
          <figcaption>{t("creditQuery")}</figcaption>
        </figure>
        <figure className={styles.reference}>
          <LinkedPane zoom={zoom} side="reference" label={t("paneReference")} focusable>
            <Layer image={photograph} alt={t("altReference", { title })} scale={ratio ?? 1} />
          </LinkedPane>
          <figcaption>
            {t("creditReference", { credit: photograph.credit, licence: photograph.licence })}
          </figcaption>
        </figure>
        {mode === "wipe" && <span className={styles.edge} style={{ left: `${wipe}%` }} aria-hidden="true" />}
      </div>
      <p className={styles.keys} id="compare-keys">
        <span>{t("keys")}</span>
        <span>{t("fingers")}</span>
      </p>
      <FineTools
        turn={turn}
        matched={matched}
        onTurn={setTurn}
        millimetres={millimetres}
        onMillimetres={setMillimetres}
        plausible={plausibleMm(query.region, photograph)}
      />
      <OtherPhotographs photographs={photographs} index={index} onIndex={setIndex} />
    </section>
  );
}
