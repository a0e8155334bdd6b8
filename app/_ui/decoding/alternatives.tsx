import { useTranslations } from "next-intl";
import type { DatedStatement } from "#core/dating/evidence";
import type { Worksheet } from "#core/dating/worksheet";
import type { LetterStatement } from "#core/decoding/hallmark";
import styles from "./answer.module.css";
import { LetterInStyle } from "./letter-in-style.tsx";
import { StatementFacts } from "./statement-facts.tsx";
import { useWindowWords } from "./use-window-words.ts";
import { WorksheetLink } from "./worksheet-link.tsx";

type AlternativesProps = { readonly alternatives: readonly DatedStatement[]; readonly worksheet: Worksheet };

/** Statements that exclude each other: one goes to the worksheet once it is known which, or all as one piece. */
export function Alternatives({ alternatives, worksheet }: AlternativesProps) {
  const t = useTranslations("decoders");
  const say = useWindowWords();
  // Letters are told apart by their years; the days are in each one's reason.
  const letterYears = ({ edtf }: LetterStatement) => {
    const [from = "", to = ""] = edtf.split("/").map((day) => day.slice(0, 4));
    return t("window.letterYears", { from, to, same: String(from === to) });
  };
  const [first, ...others] = alternatives;
  if (!first) return null;
  return (
    <section className={styles.part} aria-labelledby="alternatives">
      <h2 id="alternatives">{t("alternatives", { count: alternatives.length })}</h2>
      <p>{t("alternativesNote")}</p>
      <ol className={styles.alternatives}>
        {alternatives.map((statement) => (
          <li key={`${statement.edtf} ${statement.reason}`}>
            <Alternative
              statement={statement}
              window={isLetter(statement) ? letterYears(statement) : say(statement.edtf)}
              worksheet={worksheet}
            />
          </li>
        ))}
      </ol>
      <p>
        <WorksheetLink
          statement={first}
          window={say(first.edtf)}
          others={others.map(({ edtf }) => edtf)}
          worksheet={worksheet}
        />
      </p>
    </section>
  );
}

type AlternativeProps = {
  readonly statement: DatedStatement;
  readonly window: string;
  readonly worksheet: Worksheet;
};

function Alternative({ statement, window, worksheet }: AlternativeProps) {
  const t = useTranslations("decoders");
  return (
    <>
      {isLetter(statement) && <LetterInStyle letter={statement.letter} style={statement.style} />}
      <div>
        <h3 className={styles.choice}>{window}</h3>
        <p>{statement.reason}</p>
        <details>
          <summary>{t("sourceAndExceptions")}</summary>
          <StatementFacts statement={statement} />
        </details>
        <p>
          <WorksheetLink statement={statement} window={window} worksheet={worksheet} />
        </p>
      </div>
    </>
  );
}

const isLetter = (statement: DatedStatement): statement is LetterStatement => "letter" in statement;
