import Link from "next/link";
import { useTranslations } from "next-intl";
import type { CSSProperties } from "react";
import type { AskedPhotograph } from "#core/look-ups/asked-photographs";
import type { LookUpView } from "#core/look-ups/look-up";
import { Cut } from "../cut.tsx";
import { imageAtLeast } from "../image-address.ts";
import plain from "../plain.module.css";
import styles from "./query-photograph.module.css";

/** Where the region lies on the whole photograph. */
function frameOf({ width, height, region }: AskedPhotograph): CSSProperties {
  const percent = (part: number, whole: number) => `${(100 * part) / whole}%`;
  return {
    left: percent(region.x, width),
    top: percent(region.y, height),
    width: percent(region.width, width),
    height: percent(region.height, height),
    transform: `rotate(${-region.turn}deg)`,
  };
}

type QueryPhotographProps = {
  readonly view: LookUpView;
  readonly mine: boolean;
  /** Which mark's photographs are shown, from 1. */
  readonly mark: number;
  /** The place, from 1, of the photograph that is to be shown large; another than of this mark changes nothing. */
  readonly shown: number;
};

/** A photograph that was looked up, cut to its region, as large as its column; the others of the mark in a row below. */
export function QueryPhotograph({ view, mine, mark, shown }: QueryPhotographProps) {
  const t = useTranslations("lookUp");
  const own = view.photographs.flatMap((image, i) => (image.mark === mark ? [{ image, place: i + 1 }] : []));
  const large = own.find(({ place }) => place === shown) ?? own[0];
  if (!large) return null;
  const several = own.length > 1;
  const which = own.indexOf(large) + 1;
  return (
    <figure className={styles.figure} id={`asked-${mark}`}>
      <div className={styles.mat}>
        <Cut
          image={large.image}
          alt={several ? t("queryAltNth", { n: which, count: own.length }) : t("queryAlt")}
          shownAt={720}
          eager
          snug
        />
      </div>
      {several && (
        <ul className={styles.row} aria-label={t("askedWith")}>
          {own.map(({ image, place }, i) => (
            <li key={place}>
              <Link
                href={`/look-ups/${view.id}?shown=${place}#asked-${mark}`}
                scroll={false}
                aria-current={place === large.place ? "true" : undefined}
                className={styles.thumb}
              >
                <Cut image={image} alt={t("showNth", { n: i + 1, count: own.length })} shownAt={96} />
              </Link>
            </li>
          ))}
        </ul>
      )}
      <figcaption className={styles.caption}>
        <span>{t(mine ? "yours" : "someones", { count: own.length })}</span>
        {mine && (
          <span className={styles.links}>
            <Link href={`/look-ups/${view.id}/again`} className={plain.link}>
              {t("cropAgain")}
            </Link>
            <Link href={`/look-ups/${view.id}/again#more`} className={plain.link}>
              {t("addPhotograph")}
            </Link>
          </span>
        )}
      </figcaption>
      {large.image.framedBy !== "person" && (
        <p className={styles.framed} data-framed-by={large.image.framedBy}>
          {t(large.image.framedBy === "proposal" ? "framedByProposal" : "framedByNobody")}
        </p>
      )}
      <details className={styles.whole}>
        <summary>{t("wholePhotograph")}</summary>
        <span className={styles.framing}>
          <img
            src={imageAtLeast(large.image, 1280)}
            alt={t("wholeAlt")}
            width={large.image.width}
            height={large.image.height}
            loading="lazy"
          />
          <span className={styles.frame} style={frameOf(large.image)} data-frame aria-hidden="true" />
        </span>
      </details>
    </figure>
  );
}
