"use client";

import { useTranslations } from "next-intl";
import { useEffect, useRef, useState } from "react";
import type { TypedKnowledge } from "#core/look-ups/knowledge";
import { wholeOf } from "#core/photographs/region";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import styles from "./bench.module.css";
import { checkFile } from "./check-file.ts";
import { ChooseForm } from "./choose-form.tsx";
import { rounded } from "./crop-geometry.ts";
import { Cropping } from "./cropping.tsx";
import { Known } from "./known.tsx";
import { addKnown, isAboutKnown, NOTHING_TYPED } from "./known-in.ts";
import { NextPlace, PlaceWords } from "./place-words.tsx";
import { Progress } from "./progress.tsx";
import { useChosenPhotograph } from "./use-chosen-photograph.ts";
import { useLookUp } from "./use-look-up.ts";
import { usePlaces } from "./use-places.ts";

/** The id of the plain form. */
const FORM = "look-up";

type BenchProps = {
  readonly materials: readonly string[];
  /** What was typed of the mark when a plain form was refused. */
  readonly typed?: TypedKnowledge | undefined;
};

/**
 * The bench: choose, drop, paste or take a photograph; turn and crop it to the mark; say what else is known; look it
 * up. The photograph stays as it is: what is sent is the file and the region, never a copy drawn by the browser.
 */
export function Bench({ materials, typed = NOTHING_TYPED }: BenchProps) {
  const t = useTranslations("bench");
  const lookUp = useLookUp();
  const { chosen, choose, drop, setRegion } = useChosenPhotograph();
  const places = usePlaces(chosen, setRegion);
  const [over, setOver] = useState(false);
  const bench = useRef<HTMLDivElement>(null);
  const refused = lookUp.state.now === "refused" ? lookUp.state.error : null;
  // What is wrong with the file stays wrong however it is cropped.
  const spoilt = chosen !== null && refused?.rule.startsWith("image-") === true;

  async function take(file: File) {
    const error = await checkFile(file);
    if (error) lookUp.refuse(error);
    else {
      lookUp.clear();
      choose(file);
    }
  }

  useEffect(() => {
    const onPaste = (event: ClipboardEvent) => {
      const file = event.clipboardData?.files[0];
      if (file) take(file);
    };
    document.addEventListener("paste", onPaste);
    return () => document.removeEventListener("paste", onPaste);
  });

  useEffect(() => {
    if (chosen) bench.current?.querySelector<HTMLElement>("h2")?.focus();
  }, [chosen?.file]);

  function send() {
    if (!chosen) return;
    const form = new FormData();
    form.set("photograph", chosen.file);
    // Without a region the reference looks for the mark itself and tries the whole photograph beside the place it
    // proposes: a frame that nobody touched is sent as none.
    if (chosen.region && chosen.isFramed && places.shown !== 0) {
      for (const [key, value] of Object.entries(rounded(chosen.region))) form.set(key, String(value));
    }
    addKnown(form, bench.current);
    lookUp.send(form);
  }

  const running = lookUp.state.now === "running";
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is an extra way in; the buttons inside do the same.
    <div
      ref={bench}
      className={styles.bench}
      data-bench={chosen ? "chosen" : "empty"}
      data-over={over || undefined}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        const file = event.dataTransfer.files[0];
        if (file) take(file);
      }}
    >
      {refused && !isAboutKnown(refused) && (
        <FieldErrorNote
          error={
            spoilt && refused ? { ...refused, received: `${chosen.file.name}, ${refused.received}` } : refused
          }
        />
      )}
      {lookUp.state.now === "running" && <Progress state={lookUp.state} onCancel={lookUp.cancel} />}
      {!chosen && !running && <ChooseForm id={FORM} onFile={take} />}
      {chosen && (
        <div hidden={running}>
          <form
            id={FORM}
            onSubmit={(event) => {
              event.preventDefault();
              send();
            }}
          />
          <Cropping
            src={chosen.url}
            image={chosen.size}
            region={chosen.region}
            onRegion={setRegion}
            name={chosen.file.name}
            unreadable={chosen.unreadable}
            place={<PlaceWords places={places} byHand={chosen.isFramed} />}
          >
            {!spoilt && (
              <button type="submit" form={FORM} className={plain.button}>
                {t("lookUp")}
              </button>
            )}
            {!spoilt && chosen.size && <NextPlace places={places} className={plain.quiet} />}
            {!spoilt && chosen.size && (
              <button
                type="button"
                className={plain.quiet}
                onClick={() => chosen.size && setRegion(wholeOf(chosen.size))}
              >
                {t("whole")}
              </button>
            )}
            <button
              type="button"
              className={plain.quiet}
              onClick={() => {
                lookUp.clear();
                drop();
              }}
            >
              {t("another")}
            </button>
          </Cropping>
        </div>
      )}
      {/* Outside the form, so that what was typed stays when a chosen photograph takes the form's place. */}
      <div hidden={running}>
        <Known typed={typed} error={refused} materials={materials} form={FORM} />
      </div>
    </div>
  );
}
