import { useTranslations } from "next-intl";
import type { Worksheet } from "#core/dating/worksheet";
import type { Decoded } from "#core/decoding/decoded";
import plain from "../plain.module.css";
import { Alternatives } from "./alternatives.tsx";
import styles from "./answer.module.css";
import { DecoderCautions, DecoderNotes } from "./decoder-notes.tsx";
import { Statement } from "./statement.tsx";

type AnswerProps = { readonly decoded: Decoded; readonly worksheet: Worksheet };

/** What was read, each statement with its window, reason, source, basis and exceptions. */
export function Answer({ decoded, worksheet }: AnswerProps) {
  const t = useTranslations("decoders");
  const { statements, alternatives, notes } = decoded;
  return (
    <>
      <DecoderCautions notes={notes} />
      {alternatives.length > 0 && <Alternatives alternatives={alternatives} worksheet={worksheet} />}
      {statements.length > 0 && (
        <section className={styles.part} aria-labelledby="statements">
          <h2 id="statements" className={alternatives.length === 0 ? plain.hidden : undefined}>
            {alternatives.length === 0 ? t("statements") : t("besides")}
          </h2>
          <ol className={styles.statements}>
            {statements.map((statement) => (
              <li key={`${statement.edtf} ${statement.reason}`}>
                <Statement statement={statement} worksheet={worksheet} />
              </li>
            ))}
          </ol>
        </section>
      )}
      <DecoderNotes notes={notes} worksheet={worksheet} />
    </>
  );
}
