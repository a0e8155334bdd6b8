import { useTranslations } from "next-intl";
import type { Note, NoteKind } from "#core/decoding/decoded";
import styles from "./answer.module.css";

type NotesProps = { readonly notes: readonly Note[] };

/** Notes that somebody must not overlook: they stand apart and first. */
const CAUTIONS: readonly NoteKind[] = ["contradiction", "unsafe"];
const isCaution = ({ is }: Note): boolean => CAUTIONS.includes(is);

/** What somebody must know before anything else. */
export function DecoderCautions({ notes }: NotesProps) {
  const t = useTranslations("decoders");
  return notes.filter(isCaution).map(({ is, params }) => (
    <p key={is} className={styles.caution}>
      <strong>{t("caution")}</strong> {t(`notes.${is}`, { ...params })}
    </p>
  ));
}

/** What is worth knowing besides. */
export function DecoderNotes({ notes }: NotesProps) {
  const t = useTranslations("decoders");
  const others = notes.filter((note) => !isCaution(note));
  if (others.length === 0) return null;
  return (
    <section className={styles.part} aria-labelledby="notes">
      <h2 id="notes">{t("notesHeading")}</h2>
      <ul className={styles.notes}>
        {others.map(({ is, params }) => (
          <li key={`${is} ${JSON.stringify(params)}`}>{t(`notes.${is}`, { ...params })}</li>
        ))}
      </ul>
    </section>
  );
}
