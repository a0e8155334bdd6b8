"use client";

import { useTranslations } from "next-intl";
import { useRef, useState } from "react";
import type { TypedKnowledge } from "#core/look-ups/knowledge";
import { type Region, wholeOf } from "#core/photographs/region";
import { FieldErrorNote } from "../field-error.tsx";
import { imageAtLeast } from "../image-address.ts";
import plain from "../plain.module.css";
import { rounded } from "./crop-geometry.ts";
import { Cropping } from "./cropping.tsx";
import { Known } from "./known.tsx";
import { addKnown, isAboutKnown } from "./known-in.ts";
import { Progress } from "./progress.tsx";
import { useLookUp } from "./use-look-up.ts";

type AgainBenchProps = {
  readonly image: {
    readonly sha256: string;
    readonly width: number;
    readonly height: number;
    readonly region: Region;
  };
  /** What was known when it was last looked up. */
  readonly typed: TypedKnowledge;
  readonly materials: readonly string[];
};

/** The bench for a photograph that was looked up before: crop it otherwise and ask again. */
export function AgainBench({ image, typed, materials }: AgainBenchProps) {
  const t = useTranslations("bench");
  const lookUp = useLookUp();
  const [region, setRegion] = useState(image.region);
  const bench = useRef<HTMLDivElement>(null);
  const error = lookUp.state.now === "refused" ? lookUp.state.error : null;

  function photograph() {
    const form = new FormData();
    form.set("again", image.sha256);
    for (const [key, value] of Object.entries(rounded(region))) form.set(key, String(value));
    return form;
  }

  function send() {
    const form = photograph();
    addKnown(form, bench.current);
    lookUp.send(form);
  }

  return (
    <div ref={bench} data-bench="chosen">
      {error && !isAboutKnown(error) && <FieldErrorNote error={error} />}
      {lookUp.state.now === "running" && <Progress state={lookUp.state} onCancel={lookUp.cancel} />}
      <div hidden={lookUp.state.now === "running"}>
        <Cropping src={imageAtLeast(image, 1280)} image={image} region={region} onRegion={setRegion} name="">
          <button type="button" className={plain.button} onClick={send}>
            {t("lookUp")}
          </button>
          <button type="button" className={plain.quiet} onClick={() => setRegion(wholeOf(image))}>
            {t("whole")}
          </button>
        </Cropping>
        <Known typed={typed} error={error} materials={materials} photograph={photograph} />
      </div>
    </div>
  );
}
