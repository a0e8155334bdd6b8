import { useTranslations } from "next-intl";
import type { EntrySummary } from "#core/entries/entry";
import type { KeptFile } from "#core/object-files/kept-file";
import { EntryLine } from "../entry-line.tsx";
import plain from "../plain.module.css";
import { AcceptForm } from "./mark-matches.tsx";
import { More } from "./more.tsx";
import styles from "./objects.module.css";

/** What was looked for by words, and the entries that have them, each with the revisions one may pin. */
export type ByWords = {
  readonly words: string;
  readonly found: readonly {
    readonly entry: EntrySummary;
    /** Number of the revision shown today. */
    readonly shown: number;
    readonly revisions: readonly number[];
  }[];
};

type ChooseEntryProps = {
  readonly kept: KeptFile;
  /** Id of the mark. */
  readonly mark: string;
  /** Null when nothing was looked for yet. */
  readonly byWords: ByWords | null;
};

/** Chooses an entry for a mark by its title or letters, without a look-up. */
export function ChooseEntry({ kept, mark, byWords }: ChooseEntryProps) {
  const t = useTranslations("objectPages.match");
  const id = `words-${mark}`;
  return (
    <More words={t("choose")} isOpen={byWords !== null}>
      <div className={styles.section}>
        <form action={`/objects/${kept.id}/marks#mark-${mark}`} className={styles.find}>
          <input type="hidden" name="mark" value={mark} />
          <div className={plain.field}>
            <label htmlFor={id}>{t("chooseWords")}</label>
            <input
              id={id}
              name="words"
              type="search"
              className={plain.input}
              defaultValue={byWords?.words ?? ""}
            />
          </div>
          <button type="submit" className={plain.quiet}>
            {t("chooseFind")}
          </button>
        </form>
        {byWords && byWords.found.length === 0 && (
          <p role="status">{t("chooseNone", { words: byWords.words })}</p>
        )}
        {byWords && byWords.found.length > 0 && (
          <ol>
            {byWords.found.map(({ entry, shown, revisions }) => (
              <li key={entry.slug}>
                <EntryLine entry={entry}>
                  <AcceptForm
                    {...{ kept, mark, entry: entry.slug }}
                    lookUp=""
                    revision={{ shown, revisions, title: entry.title }}
                  >
                    {t("accept")}
                  </AcceptForm>
                </EntryLine>
              </li>
            ))}
          </ol>
        )}
      </div>
    </More>
  );
}
