import Link from "next/link";
import { useTranslations } from "next-intl";
import type { LookUpView } from "#core/look-ups/look-up";
import type { KeptFile } from "#core/object-files/kept-file";
import { EntryLine } from "../entry-line.tsx";
import { Likeness } from "../likeness.tsx";
import plain from "../plain.module.css";
import { Sureness } from "../sureness.tsx";
import styles from "./objects.module.css";

type MarkMatchesProps = {
  readonly kept: KeptFile;
  /** Id of the mark that was looked up. */
  readonly mark: string;
  readonly view: LookUpView;
};

/** Entries shown; the look-up's own page has all of them. */
const SHOWN = 6;

/** What a look-up of a mark found, each with the button that accepts it; or that none of it fits. */
export function MarkMatches({ kept, mark, view }: MarkMatchesProps) {
  const t = useTranslations("objectPages.match");
  return (
    <section className={styles.section} aria-labelledby={`found-${mark}`}>
      <h3 id={`found-${mark}`}>{t(view.noneFits ? "noneFits" : "found")}</h3>
      {view.noneFits && <p>{t("noneNote")}</p>}
      <ol className={styles.list}>
        {view.matches.slice(0, SHOWN).map((match) => (
          <li key={match.entry.slug}>
            <EntryLine
              entry={match.entry}
              photograph={match.photograph}
              lead={
                match.probability === null ? (
                  <Likeness likeness={match.likeness} />
                ) : (
                  <Sureness probability={match.probability} />
                )
              }
            >
              <AcceptForm kept={kept} mark={mark} entry={match.entry.slug} lookUp={view.id}>
                {t("accept")}
              </AcceptForm>
            </EntryLine>
          </li>
        ))}
      </ol>
      <p>
        <Link href={`/look-ups/${view.id}`}>{t("whole")}</Link>
      </p>
    </section>
  );
}

type AcceptFormProps = {
  readonly kept: KeptFile;
  readonly mark: string;
  /** Slug; empty takes the match back. */
  readonly entry: string;
  readonly lookUp: string;
  readonly children: string;
};

export function AcceptForm({ kept, mark, entry, lookUp, children }: AcceptFormProps) {
  const page = `/objects/${kept.id}/marks`;
  const fields = { version: kept.version, mark, entry, lookUp, page, done: page };
  return (
    <form method="post" action={`/api/objects/${kept.id}/match`} encType="multipart/form-data">
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <button type="submit" className={entry === "" ? plain.link : plain.button}>
        {children}
      </button>
    </form>
  );
}
