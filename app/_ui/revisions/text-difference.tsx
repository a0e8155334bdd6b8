import { diffWordsWithSpace } from "diff";
import { useTranslations } from "next-intl";
import styles from "./revisions.module.css";

type TextDifferenceProps = { readonly before: string; readonly after: string };

/** Two texts as one, with the words that went and those that came; said in words too, not by colour alone. */
export function TextDifference({ before, after }: TextDifferenceProps) {
  const t = useTranslations("revisions");
  if (before === "" && after === "") return <p className={styles.nothing}>{t("nothing")}</p>;
  return (
    <p className={styles.text}>
      {diffWordsWithSpace(before, after).map(({ value, added, removed }, i) => {
        if (added)
          return (
            <ins key={i}>
              <span className={styles.spoken}>[{t("added")}: </span>
              {value}
              <span className={styles.spoken}>]</span>
            </ins>
          );
        if (removed)
          return (
            <del key={i}>
              <span className={styles.spoken}>[{t("removed")}: </span>
              {value}
              <span className={styles.spoken}>]</span>
            </del>
          );
        return <span key={i}>{value}</span>;
      })}
    </p>
  );
}
