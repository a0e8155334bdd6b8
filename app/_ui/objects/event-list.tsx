import { useTranslations } from "next-intl";
import type { ProvenanceCheck } from "#core/object-files/derived";
import type { KeptFile } from "#core/object-files/kept-file";
import { typedItem } from "#core/object-files/typed-item";
import plain from "../plain.module.css";
import { EventForm } from "./event-form.tsx";
import { EventWords } from "./event-words.tsx";
import { type RefusedItem, stateOf } from "./item-form.tsx";
import { More } from "./more.tsx";
import styles from "./objects.module.css";
import { RemoveItem } from "./remove-item.tsx";

type EventListProps = {
  readonly kept: KeptFile;
  readonly check: ProvenanceCheck;
  readonly refused: RefusedItem;
  readonly mayChange: boolean;
};

/** The chain of what happened, in its order, with the documents behind each step. */
export function EventList({ kept, check, refused, mayChange }: EventListProps) {
  const t = useTranslations("objectPages");
  const { events, documents } = kept.content;
  if (events.length === 0) return <p>{t("chain.none")}</p>;
  return (
    <ol className={styles.list}>
      {events.map((event, i) => {
        const behind = documents.filter(({ id }) => event.documents.includes(id));
        const state = stateOf(refused, "event", event.id, {
          ...typedItem(event),
          when: event.dateTyped || (event.date ?? ""),
          gap_before: event.gapBefore ? "on" : "",
        });
        const about = `${t(`events.${event.kind}`)} ${event.dateTyped}`.trim();
        const before = events[i - 1];
        return (
          <li key={event.id} id={`event-${event.id}`}>
            <EventWords event={event} step={check.chain.find((each) => each.event === event.id)} />
            {behind.length > 0 ? (
              <p className={plain.note}>
                {t("chain.behind")}{" "}
                {behind.map(({ id, kind, title }, place) => (
                  <span key={id}>
                    {place > 0 && "; "}
                    <a href={`#document-${id}`}>
                      {t(`documents.${kind}`)}: {title}
                    </a>
                  </span>
                ))}
              </p>
            ) : (
              <p className={plain.note}>{t("chain.noDocument")}</p>
            )}
            {mayChange && (
              <>
                <More words={t("change")} isOpen={state.given}>
                  <EventForm kept={kept} state={state} isThere />
                </More>
                <div className={styles.buttons}>
                  {before && <Earlier kept={kept} event={event.id} before={before.id} about={about} />}
                  <RemoveItem kept={kept} list="events" id={event.id} part="provenance" about={about} />
                </div>
              </>
            )}
          </li>
        );
      })}
    </ol>
  );
}

type EarlierProps = {
  readonly kept: KeptFile;
  readonly event: string;
  readonly before: string;
  readonly about: string;
};

function Earlier({ kept, event, before, about }: EarlierProps) {
  const t = useTranslations("objectPages");
  const page = `/objects/${kept.id}/provenance`;
  return (
    <form method="post" action={`/api/objects/${kept.id}/order`} encType="multipart/form-data">
      {Object.entries({ version: kept.version, event, before, page, done: page }).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <button type="submit" className={plain.link} aria-label={t("chain.earlierAbout", { about })}>
        {t("chain.earlier")}
      </button>
    </form>
  );
}
