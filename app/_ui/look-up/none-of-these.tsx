import Link from "next/link";
import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import type { LookUpView } from "#core/look-ups/look-up";
import { percentOf } from "#core/similarity/sureness";
import plain from "../plain.module.css";
import { isWhole } from "./crop-geometry.ts";
import styles from "./none-of-these.module.css";

type NoneOfTheseProps = {
  readonly view: LookUpView;
  readonly mine: boolean;
  /** Stands before the matches, since none of them fits. */
  readonly first?: boolean;
  /** What else can be done when none fits. */
  readonly children?: ReactNode;
  /** The id of the heading, when the page has several rankings. */
  readonly id?: string;
};

/** "None of these" is an answer like any other: what to do with it. After an uncropped photograph, first of all: crop. */
export function NoneOfThese({ view, mine, first = false, id = "none", children }: NoneOfTheseProps) {
  const t = useTranslations("none");
  const again = `/look-ups/${view.id}/again`;
  const toCrop = mine && first && isWhole(view.query.region, view.query);
  return (
    <section className={styles.none} data-first={first || undefined} aria-labelledby={id}>
      <h2 id={id}>{first ? t("headingFirst") : t("heading")}</h2>
      {toCrop && (
        <p>
          <Link href={again} className={plain.button}>
            {t("cropToMark")}
          </Link>
        </p>
      )}
      {!first && view.noneProbability !== null && (
        <p>{t("probability", { percent: percentOf(view.noneProbability) })}</p>
      )}
      <p>{first ? t("wordsFirst") : t("words")}</p>
      <ul>
        <li>{t("light")}</li>
        {!toCrop && (
          <li>
            {mine ? t.rich("crop", { link: (words) => <Link href={again}>{words}</Link> }) : t("cropPlain")}
          </li>
        )}
        <li>
          {mine
            ? t.rich("letters", { link: (words) => <a href="#known">{words}</a> })
            : t.rich("lettersPlain", { link: (words) => <Link href="/entries">{words}</Link> })}
        </li>
      </ul>
      <p>
        <Link href="/" className={plain.quiet}>
          {t("another")}
        </Link>
      </p>
      {children}
    </section>
  );
}
