"use client";

import { useTranslations } from "next-intl";
import { type KeyboardEvent, type PointerEvent, useEffect, useEffectEvent, useRef } from "react";
import styles from "./measure.module.css";
import { POINTS, type PointName, type Points } from "./measure-points.ts";

type MeasureStageProps = {
  readonly src: string;
  readonly image: { readonly width: number; readonly height: number };
  readonly points: Points;
  readonly onPoint: (name: PointName, x: number, y: number) => void;
  /** Told how many of the photograph's pixels one of the screen covers, whenever it is shown in another size. */
  readonly onScale: (pixels: number) => void;
};

const KEYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/**
 * The photograph with four points over it: two on its scale, two on the object. Each is moved by pointer or finger, or
 * by the arrow keys, ten pixels at a time with Shift.
 */
export function MeasureStage({ src, image, points, onPoint, onScale }: MeasureStageProps) {
  const t = useTranslations("objectPages.measure");
  const stage = useRef<HTMLDivElement>(null);
  const told = useEffectEvent(onScale);

  useEffect(() => {
    const node = stage.current;
    if (!node) return;
    const observer = new ResizeObserver(() => {
      if (node.clientWidth > 0) told(image.width / node.clientWidth);
    });
    observer.observe(node);
    return () => observer.disconnect();
  }, [image.width]);

  function moveTo(name: PointName, { clientX, clientY }: PointerEvent) {
    const box = stage.current?.getBoundingClientRect();
    if (!box || box.width === 0) return;
    const x = ((clientX - box.left) / box.width) * image.width;
    const y = ((clientY - box.top) / box.height) * image.height;
    onPoint(name, x, y);
  }

  function key(name: PointName, event: KeyboardEvent) {
    const by = KEYS[event.key];
    if (!by) return;
    event.preventDefault();
    const far = event.shiftKey ? 10 : 1;
    onPoint(name, points[name].x + by[0] * far, points[name].y + by[1] * far);
  }

  return (
    <div
      className={styles.stage}
      ref={stage}
      style={{
        aspectRatio: `${image.width} / ${image.height}`,
        // Never higher than the window, and never out of its shape.
        maxWidth: `min(60rem, ${(80 * image.width) / image.height}vh)`,
      }}
    >
      <img src={src} alt={t("photograph")} width={image.width} height={image.height} draggable={false} />
      <svg viewBox={`0 0 ${image.width} ${image.height}`} aria-hidden="true" focusable="false">
        <Between a={points["scale-a"]} b={points["scale-b"]} dashed />
        <Between a={points["object-a"]} b={points["object-b"]} />
      </svg>
      {POINTS.map((name) => (
        <button
          key={name}
          type="button"
          className={styles.point}
          data-of={name.startsWith("scale") ? "scale" : "object"}
          aria-label={t("point", {
            point: t(`points.${name}`),
            x: Math.round(points[name].x),
            y: Math.round(points[name].y),
          })}
          style={{
            left: `${(100 * points[name].x) / image.width}%`,
            top: `${(100 * points[name].y) / image.height}%`,
          }}
          onKeyDown={(event) => key(name, event)}
          onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
          onPointerMove={(event) => {
            if (event.currentTarget.hasPointerCapture(event.pointerId)) moveTo(name, event);
          }}
        >
          <span>{t(`letters.${name}`)}</span>
        </button>
      ))}
    </div>
  );
}

type Point = { readonly x: number; readonly y: number };

function Between({
  a,
  b,
  dashed = false,
}: {
  readonly a: Point;
  readonly b: Point;
  readonly dashed?: boolean;
}) {
  const ends = { x1: a.x, y1: a.y, x2: b.x, y2: b.y };
  return (
    <>
      <line {...ends} className={styles.under} vectorEffect="non-scaling-stroke" />
      <line
        {...ends}
        className={styles.over}
        strokeDasharray={dashed ? "6 4" : undefined}
        vectorEffect="non-scaling-stroke"
      />
    </>
  );
}
