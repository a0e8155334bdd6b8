import { useTranslations } from "next-intl";
import type { DatedStatement } from "#core/dating/evidence";
import { wordPeriod } from "../period-words.tsx";
import { wordWindow } from "./window-words.tsx";

type WorksheetLinkProps = {
  readonly statement: DatedStatement;
  /** The periods of the statements that exclude this one, where it stands for all of them. */
  readonly alternatives?: readonly string[];
  readonly worksheet: string;
  readonly className?: string | undefined;
};

/** Leads to the worksheet with a statement added to it. */
export function WorksheetLink({ statement, alternatives = [], worksheet, className }: WorksheetLinkProps) {
  const t = useTranslations("decoders");
  const words = useTranslations("decoders.window");
  const period = useTranslations("period");
  const address = new URLSearchParams({
    ...(worksheet === "" ? {} : { worksheet }),
    add: JSON.stringify({ ...statement, ...(alternatives.length === 0 ? {} : { alternatives }) }),
  });
  const window = wordWindow(statement.edtf, words, (interval) => wordPeriod(interval, period));
  return (
    <a href={`/dates?${address}`} className={className}>
      {alternatives.length === 0
        ? t.rich("add", { window, hidden: (chunks) => <span className="visually-hidden">{chunks}</span> })
        : t("addAll", { count: alternatives.length + 1 })}
    </a>
  );
}
