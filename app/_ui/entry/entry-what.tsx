import { useFormatter, useTranslations } from "next-intl";
import type { EntryView } from "#core/entries/entry";
import styles from "./entry.module.css";
import { Facts } from "./facts.tsx";

/** What it is: described, and read letter by letter. */
export function EntryWhat({ view }: { readonly view: EntryView }) {
  const t = useTranslations("entry");
  const fields = useTranslations("entryFields");
  const format = useFormatter();
  const { content } = view;
  const size = content.sizeMm;
  return (
    <section aria-labelledby="what">
      <h2 id="what">{t("what")}</h2>
      {content.description && <p>{content.description}</p>}
      <Facts
        facts={[
          [t("field"), content.field && fields(content.field)],
          [t("words"), content.words && <Transcription words={content.words} />],
          [t("emblem"), content.emblem],
          [t("frame"), content.frame],
          [t("placeOnObject"), content.placeOnObject],
          [t("colours"), content.colours.length > 0 && format.list(content.colours)],
          [
            t("size"),
            size && t("sizeMm", { width: format.number(size.width), height: format.number(size.height) }),
          ],
        ]}
      />
    </section>
  );
}

/** The wording as it stands on the object: its line breaks kept, what is unreadable left in its brackets. */
function Transcription({ words }: { readonly words: string }) {
  return (
    <span className={styles.transcription}>
      {words.split("/").map((line, i) => (
        <span key={i}>{line.trim()}</span>
      ))}
    </span>
  );
}
