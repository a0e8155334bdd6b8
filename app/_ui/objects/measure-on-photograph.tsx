"use client";

import { useFormatter, useTranslations } from "next-intl";
import { useEffect, useRef, useState } from "react";
import { measureByScale } from "#core/object-files/measure-by-scale";
import type { Typed } from "#core/questions/typed-text";
import plain from "../plain.module.css";
import styles from "./measure.module.css";
import { FIELDS, POINTS, type PointName, type Points, startPoints } from "./measure-points.ts";
import { MeasureStage } from "./measure-stage.tsx";

type MeasureOnPhotographProps = {
  readonly src: string;
  readonly image: { readonly width: number; readonly height: number };
  /** What was typed when the form was refused. */
  readonly typed: Typed;
};

/** How far off each point may be, unless somebody says otherwise: a careful finger. */
const POINT_WITHIN = "2";

/**
 * The points of a measure on a photograph, as numbers in the form and as handles over the photograph: either moves the
 * other, and the length with its uncertainty is worked out at once. Without scripts the numbers alone are there.
 */
export function MeasureOnPhotograph({ src, image, typed }: MeasureOnPhotographProps) {
  const t = useTranslations("objectPages.measure");
  const format = useFormatter();
  const [points, setPoints] = useState<Points>(() => pointsTyped(typed, image));
  const [scaleMm, setScaleMm] = useState(typed.scale_mm ?? "");
  const [within, setWithin] = useState(typed.point_within || POINT_WITHIN);
  const node = useRef<HTMLDivElement>(null);
  // What was typed before the scripts ran counts.
  useEffect(() => {
    const form = node.current?.closest("form");
    if (!form) return;
    const texts = Object.fromEntries(
      [...new FormData(form).entries()].filter(
        (entry): entry is [string, string] => typeof entry[1] === "string",
      ),
    );
    setPoints(pointsTyped(texts, image));
    setScaleMm(texts.scale_mm ?? "");
    setWithin(texts.point_within || POINT_WITHIN);
  }, [image]);
  const stretch = (a: PointName, b: PointName) => [points[a], points[b]] as const;
  const mm = Number(scaleMm.replace(",", "."));
  const result =
    mm > 0
      ? measureByScale({
          scale: stretch("scale-a", "scale-b"),
          scaleMm: mm,
          object: stretch("object-a", "object-b"),
          pointWithin: Number(within.replace(",", ".")) || Number(POINT_WITHIN),
        })
      : null;
  const shown = (value: number) => format.number(value, { maximumFractionDigits: 1 });

  function move(name: PointName, x: number, y: number) {
    const inside = (value: number, most: number) => Math.min(Math.max(0, Math.round(value)), most);
    setPoints((before) => ({ ...before, [name]: { x: inside(x, image.width), y: inside(y, image.height) } }));
  }

  return (
    <>
      <MeasureStage src={src} image={image} points={points} onPoint={move} />
      <div className={styles.numbers} ref={node}>
        <NumberField name="scale_mm" label={t("scaleMm")} value={scaleMm} onText={setScaleMm} />
        <NumberField name="point_within" label={t("pointWithin")} value={within} onText={setWithin} />
      </div>
      <p role="status">
        {result?.ok
          ? t("result", { mm: shown(result.value.millimetres), within: shown(result.value.within) })
          : t("noResult")}
      </p>
      <div className={styles.numbers}>
        {POINTS.map((name) => (
          <div key={name} className={styles.pair}>
            <NumberField
              name={FIELDS[name].x}
              label={t("across", { point: t(`letters.${name}`) })}
              value={String(points[name].x)}
              onText={(text) => move(name, Number(text) || 0, points[name].y)}
            />
            <NumberField
              name={FIELDS[name].y}
              label={t("down", { point: t(`letters.${name}`) })}
              value={String(points[name].y)}
              onText={(text) => move(name, points[name].x, Number(text) || 0)}
            />
          </div>
        ))}
      </div>
    </>
  );
}

type NumberProps = {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly onText: (text: string) => void;
};

function NumberField({ name, label, value, onText }: NumberProps) {
  return (
    <div className={plain.field}>
      <label htmlFor={`screen-${name}`}>{label}</label>
      <input
        id={`screen-${name}`}
        name={name}
        inputMode="decimal"
        autoComplete="off"
        className={plain.input}
        value={value}
        onChange={(event) => onText(event.target.value)}
      />
    </div>
  );
}

function pointsTyped(typed: Typed, image: { readonly width: number; readonly height: number }): Points {
  const start = startPoints(image);
  const given = (name: PointName) => {
    const [x, y] = [typed[FIELDS[name].x], typed[FIELDS[name].y]].map(Number);
    return x !== undefined && y !== undefined && x >= 0 && y >= 0 ? { x, y } : start[name];
  };
  return {
    "scale-a": given("scale-a"),
    "scale-b": given("scale-b"),
    "object-a": given("object-a"),
    "object-b": given("object-b"),
  };
}
