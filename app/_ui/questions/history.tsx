import { useFormatter, useTranslations } from "next-intl";
import type { QuestionEvent } from "#core/questions/question";
import type { QuestionView } from "#core/questions/question-view";
import styles from "./question.module.css";

/** Everything that happened to the question, oldest first; nothing is ever taken out of it. */
export function QuestionHistory({ view }: { readonly view: QuestionView }) {
  const t = useTranslations("questionHistory");
  const format = useFormatter();
  const { name } = view.question;
  return (
    <section aria-labelledby="history">
      <h2 id="history">{t("heading")}</h2>
      <ol className={styles.history}>
        {view.kept.events.map((event, i) => (
          <li key={i}>
            <time dateTime={event.at}>
              {format.dateTime(new Date(event.at), { dateStyle: "medium", timeStyle: "short" })}
            </time>
            <span>
              <Happened event={event} asker={name} />
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

function Happened({ event, asker }: { readonly event: QuestionEvent; readonly asker: string }) {
  const t = useTranslations("questionHistory");
  switch (event.type) {
    case "published":
      return t("published", { name: event.name });
    case "proposed":
      return t("proposed", { name: event.name, number: event.proposal });
    case "accepted":
      return t("accepted", { name: asker, number: event.proposal });
    case "acceptance taken back":
      return t("takenBack", { name: asker, number: event.proposal });
    case "declined":
      return t("declined", { name: asker, number: event.proposal });
    case "made an entry":
      return t.rich("entered", {
        name: asker,
        link: (words) => <a href={`/entries/${event.entry}`}>{words}</a>,
      });
    case "withdrawn":
      return t("withdrawn", { name: asker });
  }
}
