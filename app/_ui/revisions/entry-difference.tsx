import { useFormatter, useTranslations } from "next-intl";
import type { ReactNode } from "react";
import { parseInterval } from "#core/dates/parse";
import { type ContentField, type Difference, differenceOf, listDifference } from "#core/entries/difference";
import type { EntryContent, EntryView } from "#core/entries/entry";
import { CitationWords } from "../entry/citation-words.tsx";
import { PeriodWords } from "../period-words.tsx";
import { axisOver } from "../time/axis.ts";
import { Ticks } from "../time/ticks.tsx";
import { Track } from "../time/track.tsx";
import { PhotographChanges } from "./photograph-changes.tsx";
import styles from "./revisions.module.css";
import { TextDifference } from "./text-difference.tsx";

type EntryDifferenceProps = { readonly before: EntryView; readonly after: EntryView };

/** Where two revisions differ, field by field: texts word by word, dates on one line, photographs side by side. */
export function EntryDifference({ before, after }: EntryDifferenceProps) {
  const t = useTranslations("revisions");
  const differences = differenceOf(before, after);
  if (differences.length === 0) return <p>{t("same")}</p>;
  return (
    <div className={styles.differences}>
      {differences.map((difference) => (
        <section key={difference.field} aria-labelledby={`difference-${difference.field}`}>
          <h2 id={`difference-${difference.field}`}>{t(`fields.${difference.field}`)}</h2>
          <One difference={difference} before={before} after={after} />
        </section>
      ))}
    </div>
  );
}

function One({ difference, before, after }: EntryDifferenceProps & { readonly difference: Difference }) {
  const [from, to] = [before.content, after.content];
  switch (difference.how) {
    case "photographs":
      return <PhotographChanges changes={difference.changes} reordered={difference.reordered} />;
    case "period":
      return <Periods before={before} after={after} />;
    case "list":
      return <Lists field={difference.field} before={from} after={to} />;
    case "text":
      return (
        <TextDifference
          before={String(from[difference.field] ?? "")}
          after={String(to[difference.field] ?? "")}
        />
      );
    case "value":
      return <Pair views={[before, after]} say={(view) => <Value field={difference.field} view={view} />} />;
  }
}

/** Both sides under each other, each by the number of its revision. */
function Pair({
  views,
  say,
}: {
  readonly views: readonly EntryView[];
  readonly say: (view: EntryView) => ReactNode;
}) {
  const t = useTranslations("revisions");
  return (
    <dl className={styles.pair}>
      {views.map((view, i) => (
        <div key={i}>
          <dt>{t("before", { number: view.revision.number })}</dt>
          <dd>{say(view)}</dd>
        </div>
      ))}
    </dl>
  );
}

function Value({ field, view }: { readonly field: ContentField; readonly view: EntryView }) {
  const t = useTranslations();
  const format = useFormatter();
  const { content, summary } = view;
  const nothing = <span className={styles.nothing}>{t("revisions.nothing")}</span>;
  switch (field) {
    case "kind":
      return t(`kinds.${content.kind}`);
    case "field":
      return content.field ? t(`entryFields.${content.field}`) : nothing;
    case "technique":
      return content.technique ? t(`techniques.${content.technique}`) : nothing;
    case "maker":
      return summary.maker?.name ?? content.maker ?? nothing;
    case "makerPart":
      return content.makerPart ? t(`questionForm.parts.${content.makerPart}`) : nothing;
    case "sizeMm":
      return content.sizeMm
        ? t("entry.sizeMm", {
            width: format.number(content.sizeMm.width),
            height: format.number(content.sizeMm.height),
          })
        : nothing;
    default:
      return String(content[field] ?? "") || nothing;
  }
}

/** Both periods on one axis. */
function Periods({ before, after }: EntryDifferenceProps) {
  const t = useTranslations("revisions");
  const periods = [before, after].map(({ content, revision }) => {
    const parsed = content.period === null ? null : parseInterval(content.period);
    return { number: revision.number, period: parsed?.ok ? parsed.value : null };
  });
  const axis = axisOver(
    periods.map(({ period }) => period),
    6,
  );
  return (
    <div className={styles.periods}>
      {axis && (
        <div className={styles.ticks}>
          <Ticks axis={axis} />
        </div>
      )}
      {periods.map(({ number, period }, i) => (
        <div key={i} className={styles.period}>
          <p>
            <span className={styles.which}>{t("before", { number })}</span> <PeriodWords period={period} />
          </p>
          <div className={styles.track}>{axis && <Track period={period} axis={axis} />}</div>
        </div>
      ))}
    </div>
  );
}

type ListsProps = {
  readonly field: ContentField;
  readonly before: EntryContent;
  readonly after: EntryContent;
};

/** What went from a list and what came. */
function Lists({ field, before, after }: ListsProps) {
  const t = useTranslations("revisions");
  const words = useTranslations("entry.relations");
  const items = (content: EntryContent): readonly unknown[] => {
    const value = content[field];
    return Array.isArray(value) ? value : [];
  };
  const { removed, added, kept } = listDifference(items(before), items(after));
  const say = (item: unknown): ReactNode => {
    if (typeof item === "string") return item;
    if (field === "citations") return <CitationWords citation={item as EntryContent["citations"][number]} />;
    const { kind, entry } = item as EntryContent["relations"][number];
    return (
      <>
        {words(kind)}: <a href={`/entries/${entry}`}>{entry}</a>
      </>
    );
  };
  return (
    <ul className={styles.items}>
      {removed.map((item, i) => (
        <li key={`removed ${i}`}>
          <span className={styles.sign}>{t("removed")}</span> <del>{say(item)}</del>
        </li>
      ))}
      {added.map((item, i) => (
        <li key={`added ${i}`}>
          <span className={styles.sign}>{t("added")}</span> <ins>{say(item)}</ins>
        </li>
      ))}
      {kept.length > 0 && <li className={styles.nothing}>{t("kept", { count: kept.length })}</li>}
    </ul>
  );
}
