import Link from "next/link";
import { useTranslations } from "next-intl";
import type { CSSProperties } from "react";
import type { LookUpView } from "#core/look-ups/look-up";
import { Cut } from "../cut.tsx";
import { imageAtLeast } from "../image-address.ts";
import plain from "../plain.module.css";
import styles from "./query-photograph.module.css";

/** Where the region lies on the whole photograph. */
function frameOf({ width, height, region }: LookUpView["query"]): CSSProperties {
  const percent = (part: number, whole: number) => `${(100 * part) / whole}%`;
  return {
    left: percent(region.x, width),
    top: percent(region.y, height),
    width: percent(region.width, width),
    height: percent(region.height, height),
    transform: `rotate(${-region.turn}deg)`,
  };
}

/** The photograph that was looked up, cut to its region, as large as its column. */
export function QueryPhotograph({ view, mine }: { readonly view: LookUpView; readonly mine: boolean }) {
  const t = useTranslations("lookUp");
  return (
    <figure className={styles.figure}>
      <div className={styles.mat}>
        <Cut image={view.query} alt={t("queryAlt")} shownAt={720} eager snug />
      </div>
      <figcaption className={styles.caption}>
        <span>{mine ? t("yours") : t("someones")}</span>
        <span className={styles.links}>
          {mine && (
            <Link href={`/look-ups/${view.id}/again`} className={plain.link}>
              {t("cropAgain")}
            </Link>
          )}
        </span>
      </figcaption>
      {view.query.framedBy !== "person" && (
        <p className={styles.framed} data-framed-by={view.query.framedBy}>
          {t(view.query.framedBy === "proposal" ? "framedByProposal" : "framedByNobody")}
        </p>
      )}
      <details className={styles.whole}>
        <summary>{t("wholePhotograph")}</summary>
        <span className={styles.framing}>
          <img
            src={imageAtLeast(view.query, 1280)}
            alt={t("wholeAlt")}
            width={view.query.width}
            height={view.query.height}
            loading="lazy"
          />
          <span className={styles.frame} style={frameOf(view.query)} data-frame aria-hidden="true" />
        </span>
      </details>
    </figure>
  );
}
