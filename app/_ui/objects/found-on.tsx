import { useTranslations } from "next-intl";
import type { FileLine } from "#core/object-files/kept-file";
import { ObjectLines } from "./object-line.tsx";
import styles from "./objects.module.css";

/** Published object files in which a mark is matched with the entry; nothing where there are none. */
export function FoundOn({ lines }: { readonly lines: readonly FileLine[] }) {
  const t = useTranslations("objectPages");
  if (lines.length === 0) return null;
  return (
    <section className={styles.section} aria-labelledby="found-on">
      <h2 id="found-on">{t("foundOn")}</h2>
      <ObjectLines lines={lines} />
    </section>
  );
}
