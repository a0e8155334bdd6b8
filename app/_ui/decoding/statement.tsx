import { useTranslations } from "next-intl";
import type { DatedStatement } from "#core/dating/evidence";
import type { Worksheet } from "#core/dating/worksheet";
import type { WordingStatement } from "#core/decoding/label-wording";
import styles from "./answer.module.css";
import { StatementFacts } from "./statement-facts.tsx";
import { useWindowWords } from "./use-window-words.ts";
import { WorksheetLink } from "./worksheet-link.tsx";

type StatementProps = { readonly statement: DatedStatement; readonly worksheet: Worksheet };

/** One dated statement, whole. */
export function Statement({ statement, worksheet }: StatementProps) {
  const window = useWindowWords()(statement.edtf);
  return (
    <article className={styles.statement}>
      {isWording(statement) && <Found statement={statement} />}
      <h3 className={styles.window}>{window}</h3>
      <p>{statement.reason}</p>
      <StatementFacts statement={statement} />
      <p>
        <WorksheetLink statement={statement} window={window} worksheet={worksheet} />
      </p>
    </article>
  );
}

const isWording = (statement: DatedStatement): statement is WordingStatement => "found" in statement;

/** What of the label it was found in, and whose law or custom it is. */
function Found({ statement }: { readonly statement: WordingStatement }) {
  const t = useTranslations("decoders");
  const { found, jurisdiction } = statement;
  return (
    <p className={styles.found}>
      <q>{found}</q> {t(`jurisdictions.${jurisdiction}` as "jurisdictions.US")}
    </p>
  );
}
