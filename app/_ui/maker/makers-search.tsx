import { useTranslations } from "next-intl";
import plain from "../plain.module.css";
import styles from "./maker.module.css";

export function MakersSearch({ words }: { readonly words: string }) {
  const t = useTranslations("makers");
  return (
    <search>
      <form action="/makers" className={styles.search}>
        <label htmlFor="maker-words" className={plain.label}>
          {t("words")}
        </label>
        <div>
          <input className={plain.input} id="maker-words" name="words" type="search" defaultValue={words} />
          <button type="submit" className={plain.button}>
            {t("search")}
          </button>
        </div>
      </form>
    </search>
  );
}
