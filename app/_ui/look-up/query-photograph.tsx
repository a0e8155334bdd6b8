import Link from "next/link";
import { useTranslations } from "next-intl";
import type { LookUpView } from "#core/look-ups/look-up";
import { Cut } from "../cut.tsx";
import { imageAtLeast } from "../image-address.ts";
import plain from "../plain.module.css";
import styles from "./query-photograph.module.css";

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
      <details className={styles.whole}>
        <summary>{t("wholePhotograph")}</summary>
        <img
          src={imageAtLeast(view.query, 1280)}
          alt={t("wholeAlt")}
          width={view.query.width}
          height={view.query.height}
          loading="lazy"
        />
      </details>
    </figure>
  );
}
