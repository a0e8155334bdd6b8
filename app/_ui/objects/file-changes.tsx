import { useTranslations } from "next-intl";
import type { FileChange } from "#core/object-files/difference-of-files";
import type { ObjectFile } from "#core/object-files/object-file";
import { TextDifference } from "../revisions/text-difference.tsx";
import { useChangeWords } from "./change-words.ts";
import styles from "./objects.module.css";

type FileChangesProps = {
  readonly changes: readonly FileChange[];
  /** Both versions, by which items are called. */
  readonly contents: readonly ObjectFile[];
};

/** What a version says differently from the one before it. */
export function FileChanges({ changes, contents }: FileChangesProps) {
  const words = useChangeWords(contents);
  const t = useTranslations("objectPages.history");
  if (changes.length === 0) return <p>{t("nothing")}</p>;
  return (
    <ul className={styles.list}>
      {changes.map(({ part, is, fields }, i) => (
        // By its place: a part may have several changes, and none ever moves.
        <li key={i}>
          <h3>{t(`changes.${is}`, { part: t(`partNames.${part}`) })}</h3>
          <dl className={styles.facts}>
            {words.inOrder(fields).map(({ field, before, after }) => (
              <div key={field} style={{ display: "contents" }}>
                <dt>{words.field(field)}</dt>
                <dd>
                  <TextDifference
                    before={words.value(part, field, before)}
                    after={words.value(part, field, after)}
                  />
                </dd>
              </div>
            ))}
          </dl>
        </li>
      ))}
    </ul>
  );
}
