import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import type { ListName } from "#core/object-files/object-file";
import plain from "../plain.module.css";
import styles from "./objects.module.css";

type RemoveItemProps = {
  readonly kept: Pick<KeptFile, "id" | "version">;
  readonly list: ListName | "scans";
  readonly id: string;
  readonly part: string;
  /** Of a scan. */
  readonly document?: string;
  /** What goes, for who hears the button alone. */
  readonly about: string;
};

/** Takes an item out of a file; older versions go on having it. */
export function RemoveItem({ kept, list, id, part, document, about }: RemoveItemProps) {
  const t = useTranslations("objectPages");
  const page = `/objects/${kept.id}${part === "overview" ? "" : `/${part}`}`;
  const fields = { version: kept.version, list, id, page, done: page, ...(document ? { document } : {}) };
  return (
    <form
      method="post"
      action={`/api/objects/${kept.id}/remove`}
      encType="multipart/form-data"
      className={styles.remove}
    >
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <button type="submit" className={plain.link} aria-label={t("removeAbout", { about })}>
        {t("remove")}
      </button>
    </form>
  );
}
