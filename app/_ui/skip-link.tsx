import { useTranslations } from "next-intl";
import styles from "./site-header.module.css";

export function SkipLink() {
  const t = useTranslations("site");
  return (
    <a href="#content" className={styles.skip}>
      {t("skip")}
    </a>
  );
}
