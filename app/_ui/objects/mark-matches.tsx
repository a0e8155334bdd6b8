import Link from "next/link";
import { useTranslations } from "next-intl";
import type { LookUpView } from "#core/look-ups/look-up";
import type { KeptFile } from "#core/object-files/kept-file";
import { percentOf, SURE_FROM } from "#core/similarity/sureness";
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
      {view.noneProbability !== null && <p>{t("none", { percent: percentOf(view.noneProbability) })}</p>}
      {view.noneFits && <p>{t("noneNote")}</p>}
      <ol>
        {view.matches.slice(0, SHOWN).map((match, place) => (
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
              <AcceptForm
                {...{ kept, mark }}
                entry={match.entry.slug}
                lookUp={view.id}
                isQuiet={place > 0 || !isLikely(view)}
              >
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

/** Is the first candidate worth accepting at once? Without a calibration, where something fits at all. */
function isLikely({ noneFits, matches: [first] }: LookUpView): boolean {
  if (noneFits || !first) return false;
  return first.probability === null || first.probability >= SURE_FROM.likely;
}

type AcceptFormProps = {
  readonly kept: KeptFile;
  readonly mark: string;
  /** Slug; empty takes the match back. */
  readonly entry: string;
  readonly lookUp: string;
  /** Where one is chosen by hand: the revision shown today, and all that may be pinned. */
  readonly revision?: {
    readonly shown: number;
    readonly revisions: readonly number[];
    readonly title: string;
  };
  /** Not the button that is meant to be pressed. */
  readonly isQuiet?: boolean;
  readonly children: string;
};

export function AcceptForm({
  kept,
  mark,
  entry,
  lookUp,
  revision,
  isQuiet = false,
  children,
}: AcceptFormProps) {
  const t = useTranslations("objectPages.match");
  const page = `/objects/${kept.id}/marks`;
  const fields = { version: kept.version, mark, entry, lookUp, page, done: page };
  return (
    <form
      method="post"
      action={`/api/objects/${kept.id}/match`}
      encType="multipart/form-data"
      className={revision ? styles.find : undefined}
    >
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {revision && revision.revisions.length > 1 ? (
        <label className={plain.field}>
          {t("chooseRevision")}
          <select
            name="revision"
            className={plain.input}
            defaultValue={revision.shown}
            aria-label={t("revisionOf", { title: revision.title })}
          >
            {revision.revisions.map((number) => (
              <option key={number} value={number}>
                {t("revision", { number })}
              </option>
            ))}
          </select>
        </label>
      ) : (
        revision && <input type="hidden" name="revision" value={revision.shown} />
      )}
      <button type="submit" className={entry === "" ? plain.link : isQuiet ? plain.quiet : plain.button}>
        {children}
      </button>
    </form>
  );
}
