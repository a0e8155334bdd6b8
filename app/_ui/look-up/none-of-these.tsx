import Link from "next/link";
import { useTranslations } from "next-intl";
import plain from "../plain.module.css";
import styles from "./none-of-these.module.css";

type NoneOfTheseProps = { readonly mine: boolean; readonly id: string; readonly first?: boolean };

/** "None of these" is an answer like any other: what to do with it. */
export function NoneOfThese({ mine, id, first = false }: NoneOfTheseProps) {
  const t = useTranslations("none");
  return (
    <section className={styles.none} data-first={first || undefined} aria-labelledby="none">
      <h2 id="none">{first ? t("headingFirst") : t("heading")}</h2>
      <p>{first ? t("wordsFirst") : t("words")}</p>
      <ul>
        <li>{t("light")}</li>
        <li>
          {mine
            ? t.rich("crop", { link: (words) => <Link href={`/look-ups/${id}/again`}>{words}</Link> })
            : t("cropPlain")}
        </li>
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
    </section>
  );
}
