"use client";

import { useTranslations } from "next-intl";
import { useEffect, useRef, useState } from "react";
import type { FieldError } from "#core/field-error";
import { type AskedPhotograph, checkPhotographCount } from "#core/look-ups/asked-photographs";
import type { TypedKnowledge } from "#core/look-ups/knowledge";
import { wholeOf } from "#core/photographs/region";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import styles from "./bench.module.css";
import { checkFile } from "./check-file.ts";
import { ChooseForm } from "./choose-form.tsx";
import { Cropping } from "./cropping.tsx";
import { Known } from "./known.tsx";
import { addKnown, isAboutKnown, NOTHING_TYPED } from "./known-in.ts";
import { LaidOut } from "./laid-out.tsx";
import { addPhotographs } from "./look-up-parts.ts";
import { NextPlace, PlaceWords } from "./place-words.tsx";
import { Progress } from "./progress.tsx";
import { useChosenPhotographs } from "./use-chosen-photographs.ts";
import { useLookUp } from "./use-look-up.ts";
import { usePlaces } from "./use-places.ts";

/** The id of the plain form. */
const FORM = "look-up";

type BenchProps = {
  readonly materials: readonly string[];
  /** What was typed of the mark when a plain form was refused, or when it was looked up before. */
  readonly typed?: TypedKnowledge | undefined;
  /** Photographs that were looked up before, to be cropped again, or to lay others beside. */
  readonly looked?: readonly AskedPhotograph[];
};

/**
 * The bench: choose, drop, paste or take a photograph; turn and crop it to the mark; lay others beside it, of the same
 * mark or of another on the object; say what else is known; look it up. The photographs stay as they are: what is sent
 * is the files and the regions, never a copy drawn by the browser.
 */
export function Bench({ materials, typed = NOTHING_TYPED, looked = [] }: BenchProps) {
  const t = useTranslations("bench");
  const lookUp = useLookUp();
  const { all, at, chosen, add, remove, show, drop, setRegion, setMark } = useChosenPhotographs(looked);
  const places = usePlaces(chosen, setRegion);
  const [over, setOver] = useState(false);
  // Of a file that was not laid on the bench: it says nothing of those that are.
  const [turnedAway, setTurnedAway] = useState<FieldError | null>(null);
  const bench = useRef<HTMLDivElement>(null);
  const before = useRef(chosen?.src);
  const refused = lookUp.state.now === "refused" ? lookUp.state.error : null;
  // What is wrong with the file stays wrong however it is cropped.
  const spoilt = chosen !== null && refused?.rule.startsWith("image-") === true;

  async function take(files: readonly File[], mark: number) {
    const count = checkPhotographCount(all.length + files.length);
    if (!count.ok) return setTurnedAway(count.error);
    for (const file of files) {
      const error = await checkFile(file);
      if (error) return setTurnedAway(error);
    }
    clear();
    add(files, mark);
  }
  function clear() {
    setTurnedAway(null);
    lookUp.clear();
  }
  const takeBeside = (files: readonly File[]) => take(files, chosen?.mark ?? 1);

  useEffect(() => {
    const onPaste = (event: ClipboardEvent) => {
      const files = [...(event.clipboardData?.files ?? [])];
      if (files.length > 0) takeBeside(files);
    };
    document.addEventListener("paste", onPaste);
    return () => document.removeEventListener("paste", onPaste);
  });

  useEffect(() => {
    if (chosen && chosen.src !== before.current)
      bench.current?.querySelector<HTMLElement>("#cropping")?.focus();
    before.current = chosen?.src;
  }, [chosen?.src]);

  // The server counts photographs from 1 in the order in which they were sent, which is the order of the row.
  const wrong = refused?.params?.photograph;
  useEffect(() => {
    if (typeof wrong === "number") show(wrong - 1);
  }, [wrong]);

  /** The photograph whose letters can be read: what is known is said of the first mark. */
  function lettered() {
    const one = chosen?.mark === 1 ? chosen : all[0];
    if (!one) return null;
    const form = new FormData();
    addPhotographs(form, [one]);
    return form;
  }

  function send() {
    setTurnedAway(null);
    const form = new FormData();
    // Without a region the reference looks for the mark itself and tries the whole photograph beside the place it
    // proposes: a frame that nobody touched is sent as none.
    addPhotographs(form, all);
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
        const files = [...event.dataTransfer.files];
        if (files.length > 0) takeBeside(files);
      }}
    >
      {turnedAway && <FieldErrorNote error={turnedAway} />}
      {refused && !isAboutKnown(refused) && (
        <FieldErrorNote
          error={
            spoilt && chosen.name !== ""
              ? { ...refused, received: `${chosen.name}, ${refused.received}` }
              : refused
          }
        />
      )}
      {lookUp.state.now === "running" && <Progress state={lookUp.state} onCancel={lookUp.cancel} />}
      {!chosen && !running && <ChooseForm id={FORM} onFiles={(files) => take(files, 1)} />}
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
            key={chosen.src}
            src={chosen.src}
            image={chosen.size}
            region={chosen.region}
            onRegion={setRegion}
            name={chosen.name}
            unreadable={chosen.unreadable}
            others={
              <LaidOut
                all={all}
                at={at}
                onShow={show}
                onRemove={(src) => {
                  clear();
                  remove(src);
                }}
                onMark={setMark}
                onFiles={take}
              />
            }
            place={<PlaceWords places={places} byHand={chosen.framedBy === "person"} />}
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
                clear();
                drop();
              }}
            >
              {t(all.length > 1 ? "anew" : "another")}
            </button>
          </Cropping>
        </div>
      )}
      {/* Outside the form, so that what was typed stays when a chosen photograph takes the form's place. */}
      <div hidden={running}>
        <Known
          typed={typed}
          error={refused}
          materials={materials}
          form={FORM}
          photograph={chosen && !spoilt ? lettered : undefined}
        />
      </div>
    </div>
  );
}
