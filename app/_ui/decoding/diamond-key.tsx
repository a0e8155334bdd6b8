import { useTranslations } from "next-intl";
import { DIAMOND_CORNERS, type DiamondSeries, lookUpDiamond } from "#core/decoding/diamond-table";
import styles from "./diamond.module.css";
import { DiamondOutline } from "./diamond-outline.tsx";

/** Where the words stand in the drawing of the key. */
const AT = { top: [60, 53], right: [95.5, 83.5], bottom: [60, 115], left: [24.5, 83.5] } as const;

/** What each corner holds in one of the two series. */
export function DiamondKey({ series }: { readonly series: DiamondSeries }) {
  const t = useTranslations("decoders.diamond");
  const holds = (corner: (typeof DIAMOND_CORNERS)[number]) =>
    String(lookUpDiamond("position", corner, series)?.value ?? "") as "year";
  return (
    <figure className={styles.key}>
      <DiamondOutline>
        <text x="60" y="20" textAnchor="middle" className={styles.word}>
          {t("parts.class")}
        </text>
        {DIAMOND_CORNERS.map((corner) => (
          <text key={corner} x={AT[corner][0]} y={AT[corner][1]} textAnchor="middle" className={styles.word}>
            {t(`parts.${holds(corner)}`)}
          </text>
        ))}
      </DiamondOutline>
      <figcaption>
        {t("key", {
          series: series.replace("-", "\u2013"),
          top: t(`parts.${holds("top")}`),
          right: t(`parts.${holds("right")}`),
          bottom: t(`parts.${holds("bottom")}`),
          left: t(`parts.${holds("left")}`),
        })}
      </figcaption>
    </figure>
  );
}
