"use client";

import dynamic from "next/dynamic";
import { useTranslations } from "next-intl";
import { useEffect, useRef, useState } from "react";
import type { DraftPhotograph } from "#core/drafts/draft";
import { photographField } from "#core/drafts/draft-fields";
import { checkRegion, type Region, wholeOf } from "#core/photographs/region";
import type { Typed } from "#core/questions/typed-text";
import { imageAtLeast } from "../image-address.ts";
import { rounded } from "../look-up/crop-geometry.ts";
import { Turning } from "../look-up/turning.tsx";
import plain from "../plain.module.css";
import { AlikeEntries } from "./alike-entries.tsx";
import styles from "./contribute.module.css";

// Only ever in the browser: the cropper numbers its parts by the order they are made in.
const CropStage = dynamic(() => import("../look-up/crop-stage.tsx").then((module) => module.CropStage), {
  ssr: false,
});

const PARTS = ["x", "y", "width", "height", "turn"] as const;

type FramePhotographProps = {
  readonly draft: string;
  readonly photograph: DraftPhotograph;
  readonly typed: Typed;
};

/** A photograph with the frame round its mark: drawn where scripts run, as numbers where they do not. */
export function FramePhotograph({ draft, photograph, typed }: FramePhotographProps) {
  const t = useTranslations("draftIsland");
  const b = useTranslations("bench");
  const [region, setRegion] = useState<Region>(() => regionIn(typed, photograph));
  const [drawn, setDrawn] = useState(false);
  const fields = useRef<HTMLDivElement>(null);
  const first = useRef(true);
  useEffect(() => setDrawn(true), []);
  // A field that is set by a script tells nobody: what keeps the draft hears of it so.
  useEffect(() => {
    if (first.current) first.current = false;
    else fields.current?.dispatchEvent(new Event("input", { bubbles: true }));
  }, [region]);
  const shown = rounded(region);
  return (
    <>
      {drawn ? (
        <div className={styles.framing}>
          <CropStage
            src={imageAtLeast(photograph, 1280)}
            image={photograph}
            region={region}
            onRegion={setRegion}
          />
          <p className={plain.note}>{t("frameNote")}</p>
          <Turning image={photograph} region={region} onRegion={setRegion} />
          <p>
            <button type="button" className={plain.quiet} onClick={() => setRegion(wholeOf(photograph))}>
              {t("whole")}
            </button>
          </p>
        </div>
      ) : (
        <img
          className={styles.picture}
          src={imageAtLeast(photograph, 1280)}
          width={photograph.width}
          height={photograph.height}
          alt={b("yourPhotograph")}
        />
      )}
      <div ref={fields} className={drawn ? undefined : styles.numbers}>
        {PARTS.map((part) => {
          const name = photographField(photograph.sha256, part);
          if (drawn) return <input key={part} type="hidden" name={name} value={shown[part]} />;
          return (
            <label key={part} className={plain.label}>
              {part === "turn" ? b("turnClockwise") : `${b(`box.${part}`)}, ${b("pixels")}`}
              <input
                className={plain.input}
                type="number"
                step="any"
                name={name}
                defaultValue={shown[part]}
              />
            </label>
          );
        })}
      </div>
      {drawn && <AlikeEntries draft={draft} sha256={photograph.sha256} region={shown} />}
    </>
  );
}

/** The frame that was typed; else the place proposed, or all of the photograph. */
function regionIn(typed: Typed, photograph: DraftPhotograph): Region {
  const fallback = photograph.proposed ?? wholeOf(photograph);
  const part = (name: (typeof PARTS)[number]) => {
    const text = (typed[photographField(photograph.sha256, name)] ?? "").trim();
    return text === "" ? fallback[name] : Number(text);
  };
  const wanted = {
    x: part("x"),
    y: part("y"),
    width: part("width"),
    height: part("height"),
    turn: part("turn"),
  };
  return checkRegion(wanted, photograph).ok ? wanted : fallback;
}
