import { useTranslations } from "next-intl";
import plain from "../plain.module.css";
import styles from "./objects.module.css";

type RestoreVersionProps = {
  readonly file: string;
  /** Number of the one that is brought back. */
  readonly number: number;
  /** Number of the newest. */
  readonly newest: number;
};

/** Brings an older version back, as a new one. */
export function RestoreVersion({ file, number, newest }: RestoreVersionProps) {
  const t = useTranslations("objectPages.history");
  return (
    <form
      method="post"
      action={`/api/objects/${file}/restore`}
      encType="multipart/form-data"
      className={styles.remove}
    >
      <input type="hidden" name="number" value={number} />
      <input type="hidden" name="version" value={newest} />
      <button type="submit" className={plain.link} aria-label={t("restoreAbout", { number })}>
        {t("restore")}
      </button>
    </form>
  );
}
