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

/** How far off each point may be at least, unless somebody says otherwise: a careful finger. */
const POINT_WITHIN = 2;

/**
 * The points of a measure on a photograph, as numbers in the form and as handles over the photograph: either moves the
 * other, and the length with its uncertainty is worked out at once. Nothing is sent before every point was placed.
 * Without scripts the numbers alone are there.
 */
export function MeasureOnPhotograph({ src, image, typed }: MeasureOnPhotographProps) {
  const t = useTranslations("objectPages.measure");
  const format = useFormatter();
  const [points, setPoints] = useState<Points>(() => pointsTyped(typed, image));
  const [placed, setPlaced] = useState<ReadonlySet<PointName>>(() => placedIn(points, image));
  const [scaleMm, setScaleMm] = useState(typed.scale_mm ?? "");
  const [coarse, setCoarse] = useState(POINT_WITHIN);
  const [withinTyped, setWithinTyped] = useState(typed.point_within || null);
  const within = withinTyped ?? String(coarse);
  const node = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const take = () => {
      const form = node.current?.closest("form");
      if (!form) return;
      const texts = textsOf(form);
      const there = pointsTyped(texts, image);
      setPoints(there);
      setPlaced(placedIn(there, image));
      setScaleMm(texts.scale_mm ?? "");
      if (texts.point_within !== String(POINT_WITHIN)) setWithinTyped(texts.point_within || null);
    };
    // What was typed before the scripts ran counts, and what the form around this puts back once it is there.
    queueMicrotask(take);
  }, [image]);
  const missing = POINTS.filter((name) => !placed.has(name));
  const notPlaced = t("notPlaced", { points: format.list(missing.map((name) => t(`letters.${name}`))) });
  const result = lengthOf(points, scaleMm, within);
  const shown = (value: number) => format.number(value, { maximumFractionDigits: 1 });

  function move(name: PointName, x: number, y: number) {
    const inside = (value: number, most: number) => Math.min(Math.max(0, Math.round(value)), most);
    setPoints((before) => ({ ...before, [name]: { x: inside(x, image.width), y: inside(y, image.height) } }));
    setPlaced((before) => new Set([...before, name]));
  }

  /** Points that were placed while the photograph was small don't become surer when it is shown larger. */
  function scaled(pixels: number) {
    const next = Math.max(POINT_WITHIN, Math.ceil(2 * pixels));
    setCoarse((before) => (missing.length < POINTS.length ? Math.max(before, next) : next));
  }

  return (
    <>
      <MeasureStage src={src} image={image} points={points} onPoint={move} onScale={scaled} />
      <div className={styles.numbers} ref={node}>
        <NumberField name="scale_mm" label={t("scaleMm")} value={scaleMm} onText={setScaleMm} />
        <NumberField name="point_within" label={t("pointWithin")} value={within} onText={setWithinTyped} />
      </div>
      <p role="status">
        {missing.length > 0
          ? notPlaced
          : result?.ok
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
              wrong={placed.has(name) ? "" : notPlaced}
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

function lengthOf(points: Points, scaleMm: string, within: string) {
  const mm = Number(scaleMm.replace(",", "."));
  if (!(mm > 0)) return null;
  return measureByScale({
    scale: [points["scale-a"], points["scale-b"]],
    scaleMm: mm,
    object: [points["object-a"], points["object-b"]],
    pointWithin: Number(within.replace(",", ".")) || POINT_WITHIN,
  });
}

type NumberProps = {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  /** Why the browser does not send the form yet; empty when it may. */
  readonly wrong?: string;
  readonly onText: (text: string) => void;
};

function NumberField({ name, label, value, wrong = "", onText }: NumberProps) {
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.setCustomValidity(wrong), [wrong]);
  return (
    <div className={plain.field}>
      <label htmlFor={`screen-${name}`}>{label}</label>
      <input
        ref={input}
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

const placedIn = (points: Points, image: Parameters<typeof startPoints>[0]): ReadonlySet<PointName> => {
  const start = startPoints(image);
  const isMoved = (name: PointName) => points[name].x !== start[name].x || points[name].y !== start[name].y;
  return new Set(POINTS.filter(isMoved));
};

function textsOf(form: HTMLFormElement): Typed {
  const all = [...new FormData(form).entries()];
  return Object.fromEntries(
    all.flatMap(([name, value]) => (typeof value === "string" ? [[name, value]] : [])),
  );
}
