"use client";

import { useTranslations } from "next-intl";
import { useState } from "react";
import type { Photograph } from "#core/photographs/photograph";
import { fullImage } from "../image-address.ts";
import { PhotographStage } from "./photograph-stage.tsx";
import { ScaleBar } from "./scale-bar.tsx";
import styles from "./viewer.module.css";

type ViewerProps = { readonly title: string; readonly photographs: readonly Photograph[] };

/** An entry's photographs: one large on its mat with scale bar, credit and licence; the others at hand below. */
export function Viewer({ title, photographs }: ViewerProps) {
  const t = useTranslations("viewer");
  const [index, setIndex] = useState(0);
  const [scale, setScale] = useState(1);
  const photograph = photographs[index] ?? photographs[0];
  if (!photograph) return <p className={styles.none}>{t("none")}</p>;

  return (
    <section className={styles.viewer} aria-label={t("label")}>
      <figure className={styles.figure}>
        <div className={styles.mat}>
          <PhotographStage key={photograph.id} photograph={photograph} title={title} onScale={setScale} />
          <ScaleBar photograph={photograph} scale={scale} />
        </div>
        <figcaption className={styles.caption}>
          {photograph.shows && <span className={styles.shows}>{photograph.shows}</span>}
          <span>{t("credit", { credit: photograph.credit, licence: photograph.licence })}</span>
        </figcaption>
      </figure>
      {photographs.length > 1 && (
        <ul className={styles.thumbs} aria-label={t("all")}>
          {photographs.map((each, i) => (
            <li key={each.id}>
              <a
                href={fullImage(each)}
                aria-label={t("nth", { n: i + 1, count: photographs.length, shows: each.shows })}
                aria-current={i === index ? "true" : undefined}
                onClick={(event) => {
                  event.preventDefault();
                  setScale(1);
                  setIndex(i);
                }}
              >
                <img
                  src={`${fullImage(each)}?w=320`}
                  alt=""
                  width={each.width}
                  height={each.height}
                  loading="lazy"
                />
              </a>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
