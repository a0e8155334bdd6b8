import { useTranslations } from "next-intl";
import type { Note, NoteKind } from "#core/decoding/decoded";
import styles from "./answer.module.css";

/** Notes that somebody must not overlook: they stand apart and first. */
const CAUTIONS: readonly NoteKind[] = ["contradiction", "unsafe"];

/** What is worth knowing besides. */
export function DecoderNotes({ notes }: { readonly notes: readonly Note[] }) {
  const t = useTranslations("decoders");
  const cautions = notes.filter((note) => CAUTIONS.includes(note.is));
  const others = notes.filter((note) => !CAUTIONS.includes(note.is));
  const words = ({ is, params }: Note) => t(`notes.${is}`, { ...params });
  return (
    <>
      {cautions.map((note) => (
        <p key={note.is} className={styles.caution}>
          <strong>{t("caution")}</strong> {words(note)}
        </p>
      ))}
      {others.length > 0 && (
        <section className={styles.part} aria-labelledby="notes">
          <h2 id="notes">{t("notesHeading")}</h2>
          <ul className={styles.notes}>
            {others.map((note) => (
              <li key={`${note.is} ${JSON.stringify(note.params)}`}>{words(note)}</li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
