import { useTranslations } from "next-intl";
import type { DatedStatement } from "#core/dating/evidence";
import { type Worksheet, worksheetAddress } from "#core/dating/worksheet";
import plain from "../plain.module.css";
import styles from "./answer.module.css";

type WorksheetLinkProps = {
  readonly statement: DatedStatement;
  /** The statement's window in words, which tells one link from the next. */
  readonly window: string;
  /** The periods of the statements that exclude this one, where it stands for all of them. */
  readonly others?: readonly string[];
  readonly worksheet: Worksheet;
};

/** Leads to the worksheet with a statement added to it. */
export function WorksheetLink({ statement, window, others = [], worksheet }: WorksheetLinkProps) {
  const t = useTranslations("decoders");
  return (
    <a
      href={worksheetAddress(worksheet, statement, others)}
      className={others.length > 0 ? plain.quiet : styles.add}
      rel="nofollow"
    >
      {others.length > 0 ? (
        t("addAll", { count: others.length + 1 })
      ) : (
        <span>
          {t("add")}
          <span className={plain.hidden}>{t("addWhat", { window })}</span>
        </span>
      )}
    </a>
  );
}
