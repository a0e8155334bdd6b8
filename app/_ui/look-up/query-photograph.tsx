import Link from "next/link";
import { useTranslations } from "next-intl";
import type { LookUpView } from "#core/look-ups/look-up";
import { Cut } from "../cut.tsx";
import { fullImage } from "../image-address.ts";
import plain from "../plain.module.css";
import styles from "./query-photograph.module.css";

/** The photograph that was looked up, cut to its region, as large as its column. */
export function QueryPhotograph({ view, mine }: { readonly view: LookUpView; readonly mine: boolean }) {
  const t = useTranslations("lookUp");
  return (
    <figure className={styles.figure}>
      <div className={styles.mat}>
        <Cut image={view.query} alt={t("queryAlt")} shownAt={720} eager />
      </div>
      <figcaption className={styles.caption}>
        <span>{mine ? t("yours") : t("someones")}</span>
        <span className={styles.links}>
          {mine && (
            <Link href={`/look-ups/${view.id}/again`} className={plain.link}>
              {t("cropAgain")}
            </Link>
          )}
          <a href={fullImage(view.query)} className={plain.link}>
            {t("wholePhotograph")}
          </a>
        </span>
      </figcaption>
    </figure>
  );
}
