import Link from "next/link";
import { useTranslations } from "next-intl";
import type { Worksheet } from "#core/dating/worksheet";
import type { Note, NoteKind } from "#core/decoding/decoded";
import { isDecoder } from "#core/decoding/decoders";
import styles from "./answer.module.css";
import { addressOfDecoder, carriedFields } from "./asked.ts";

type NotesProps = { readonly notes: readonly Note[] };
type AllNotesProps = NotesProps & { readonly worksheet: Worksheet };

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
export function DecoderNotes({ notes, worksheet }: AllNotesProps) {
  const t = useTranslations("decoders");
  const others = notes.filter((note) => !isCaution(note));
  if (others.length === 0) return null;
  return (
    <section className={styles.part} aria-labelledby="notes">
      <h2 id="notes">{t("notesHeading")}</h2>
      <ul className={styles.notes}>
        {others.map((note) => (
          <li key={JSON.stringify(note)}>
            {note.is === "read-further" ? (
              <ReadFurther note={note} worksheet={worksheet} />
            ) : (
              t(`notes.${note.is}`, { ...note.params })
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Leads to the decoder that reads a number found among the words, with the number filled in. */
function ReadFurther({ note, worksheet }: { readonly note: Note; readonly worksheet: Worksheet }) {
  const t = useTranslations("decoders");
  const name = String(note.params?.decoder ?? "");
  const number = String(note.params?.number ?? "");
  if (!isDecoder(name)) return null;
  const carried = carriedFields(worksheet).map(([field, value]) => [field, value]);
  const query = new URLSearchParams([...carried, ["number", number]]);
  return t.rich("notes.read-further", {
    number,
    decoder: t(`names.${name}`),
    link: (words) => <Link href={`${addressOfDecoder(name)}?${query}`}>{words}</Link>,
  });
}
