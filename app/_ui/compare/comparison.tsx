"use client";

import { useTranslations } from "next-intl";
import { useState } from "react";
import type { AskedPhotograph } from "#core/look-ups/asked-photographs";
import type { Photograph } from "#core/photographs/photograph";
import { AgreeingPoints } from "./agreeing-points.tsx";
import styles from "./compare.module.css";
import { CompareTools } from "./compare-tools.tsx";
import { FineTools } from "./fine-tools.tsx";
import { LaidOver } from "./laid-over.tsx";
import { LaidTools } from "./laid-tools.tsx";
import { Layer } from "./layer.tsx";
import { LinkedPane } from "./linked-pane.tsx";
import { MODES, type Mode } from "./modes.ts";
import { OtherPhotographs } from "./other-photographs.tsx";
import { plausibleMm, realSizeRatio } from "./real-size.ts";
import { useAlignment } from "./use-alignment.ts";
import { useBlink } from "./use-blink.ts";
import { useLinkedZoom } from "./use-linked-zoom.ts";

/** A photograph that was asked with. */
export type AskedToCompare = {
  /** Its place among all that were asked with, from 1. */
  readonly place: number;
  readonly image: AskedPhotograph;
  /** Degrees clockwise that brought it onto the photograph of the entry that resembles it most. */
  readonly turn: number;
};

type ComparisonProps = {
  readonly lookUp: string;
  /** The slug of the entry. */
  readonly entry: string;
  /** The photographs asked with that show this mark; at least one. */
  readonly asked: readonly AskedToCompare[];
  /** Which of them is shown first, by its index. */
  readonly startAsked: number;
  readonly photographs: readonly Photograph[];
  readonly start: number;
  readonly title: string;
};

/**
 * Two photographs under one glass. Both panes always exist and move together; the modes only lay them side by side
 * or one over the other.
 */
export function Comparison(props: ComparisonProps) {
  const { asked, photographs, start, title } = props;
  const t = useTranslations("compare");
  const [index, setIndex] = useState(start);
  const [mode, setMode] = useState<Mode>(MODES[0]);
  const [askedIndex, setAskedIndex] = useState(props.startAsked);
  const shownAsked = asked[askedIndex] ?? asked[0];
  const matched = shownAsked?.turn ?? 0;
  const [turn, setTurn] = useState(signed(matched));
  const [wipe, setWipe] = useState(50);
  const [millimetres, setMillimetres] = useState(Number.NaN);
  const zoom = useLinkedZoom();
  const blink = useBlink(mode === "blink");
  const photograph = photographs[index] ?? photographs[0];
  const [opacity, setOpacity] = useState(60);
  const [points, setPoints] = useState(false);
  const address = `/api/look-ups/${props.lookUp}/alignment?entry=${props.entry}&photograph=${photograph?.id}&asked=${shownAsked?.place}`;
  const { state, again } = useAlignment(address, mode === "laid");
  if (!photograph || !shownAsked) return null;
  const query = shownAsked.image;

  const ratio = realSizeRatio(query.region, photograph, millimetres);
  const found = state.now === "found" ? state : null;
  // Until one is found to lie over the other, they stand side by side.
  const shown = mode === "laid" && !found ? "side" : mode;
  const laid = shown === "laid" ? found : null;
  const drawn = points && (shown === "side" || laid) ? found?.alignment.points : undefined;
  const over = {
    side: {},
    wipe: { clipPath: `inset(0 ${100 - wipe}% 0 0)` },
    blink: { opacity: blink.second ? 0 : 1 },
    laid: { visibility: "hidden" },
  } as const;
  return (
    <section className={styles.comparison} aria-label={t("label")}>
      <CompareTools mode={mode} onMode={setMode} wipe={wipe} onWipe={setWipe} blink={blink} zoom={zoom} />
      {mode === "laid" && (
        <LaidTools
          state={state}
          onAgain={again}
          opacity={opacity}
          onOpacity={setOpacity}
          points={points}
          onPoints={setPoints}
        />
      )}
      <div className={styles.panes} data-mode={shown}>
        <figure className={styles.query} style={over[shown]}>
          <LinkedPane zoom={zoom} side="query" label={t("paneQuery")} focusable={shown === "side"}>
            <Layer image={query} alt={t("altQuery")} turn={turn}>
              {drawn && (
                <AgreeingPoints points={drawn.map((each) => each.query)} region={query.region} turn={turn} />
              )}
            </Layer>
          </LinkedPane>
          <figcaption>{t("creditQuery")}</figcaption>
        </figure>
        <figure className={styles.reference}>
          <LinkedPane zoom={zoom} side="reference" label={t("paneReference")} focusable>
            <Layer image={photograph} alt={t("altReference", { title })} scale={laid ? 1 : (ratio ?? 1)}>
              {laid && (
                <LaidOver
                  query={query}
                  alt={t("altLaid")}
                  region={photograph.region}
                  homography={laid.homography}
                  opacity={opacity / 100}
                />
              )}
              {drawn && (
                <AgreeingPoints points={drawn.map(({ reference }) => reference)} region={photograph.region} />
              )}
            </Layer>
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
      {!laid && (
        <FineTools
          turn={turn}
          matched={matched}
          onTurn={setTurn}
          millimetres={millimetres}
          onMillimetres={setMillimetres}
          plausible={plausibleMm(query.region, photograph)}
        />
      )}
      <OtherPhotographs
        heading={t("othersAsked")}
        photographs={asked.map(({ image, place }) => ({ image, id: String(place) }))}
        index={asked.indexOf(shownAsked)}
        onIndex={(next) => {
          setAskedIndex(next);
          setTurn(signed(asked[next]?.turn ?? 0));
        }}
      />
      <OtherPhotographs
        heading={t("others")}
        photographs={photographs.map((image) => ({ image, id: image.id }))}
        index={index}
        onIndex={setIndex}
      />
    </section>
  );
}

/** Degrees from -180 to 180. */
const signed = (turn: number): number => (turn > 180 ? turn - 360 : turn);
