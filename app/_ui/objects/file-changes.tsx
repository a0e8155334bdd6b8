import { useTranslations } from "next-intl";
import type { FileChange } from "#core/object-files/difference-of-files";
import { TextDifference } from "../revisions/text-difference.tsx";
import styles from "./objects.module.css";

/** What a version says differently from the one before it. */
export function FileChanges({ changes }: { readonly changes: readonly FileChange[] }) {
  const t = useTranslations("objectPages.history");
  if (changes.length === 0) return <p>{t("nothing")}</p>;
  return (
    <ul className={styles.list}>
      {changes.map(({ part, is, fields }, i) => (
        // By its place: a part may have several changes, and none ever moves.
        <li key={i}>
          <h3>{t(`changes.${is}`, { part: t(`partNames.${part}`) })}</h3>
          <dl className={styles.facts}>
            {fields.map(({ field, before, after }) => (
              <div key={field} style={{ display: "contents" }}>
                <dt>{field}</dt>
                <dd>
                  <TextDifference before={before} after={after} />
                </dd>
              </div>
            ))}
          </dl>
        </li>
      ))}
    </ul>
  );
}
