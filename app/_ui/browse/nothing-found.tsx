import Link from "next/link";
import { useTranslations } from "next-intl";
import styles from "./browse.module.css";

/** No entry answers the search: what to do next. */
export function NothingFound() {
  const t = useTranslations("nothing");
  return (
    <div className={styles.nothing}>
      <p>{t("words")}</p>
      <ul>
        <li>{t("fewer")}</li>
        <li>{t.rich("photograph", { link: (words) => <Link href="/">{words}</Link> })}</li>
        <li>{t.rich("all", { link: (words) => <Link href="/entries">{words}</Link> })}</li>
      </ul>
    </div>
  );
}
