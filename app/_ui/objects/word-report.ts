import type { useFormatter, useTranslations } from "next-intl";
import { mapReport, type Phrase, type Report } from "#core/object-files/report/blocks";
import { wordEdtf } from "../word-edtf.ts";

type Format = Pick<ReturnType<typeof useFormatter>, "number">;
/** Bound to no part of the messages. */
type Translate = (key: never, params: never) => string;

/** A report with its sentences made. */
export function wordReport(
  report: Report<Phrase>,
  t: Translate,
  period: ReturnType<typeof useTranslations<"period">>,
  format: Format,
): Report<string> {
  const say = (phrase: Phrase): string => {
    if (typeof phrase === "string") return phrase;
    if ("edtf" in phrase) return wordEdtf(phrase.edtf, period);
    if ("figure" in phrase) return format.number(phrase.figure, { maximumFractionDigits: 1 });
    if ("row" in phrase) return joined(phrase.row.map(say), phrase.joined);
    const params = Object.entries(phrase.params ?? {}).map(([name, value]) => [
      name,
      typeof value === "number" ? value : say(value),
    ]);
    return t(phrase.key as never, Object.fromEntries(params) as never);
  };
  return mapReport(report, say);
}

/** A full stop is not doubled where a part brings its own. */
function joined(parts: readonly string[], by: string): string {
  return parts
    .filter((part) => part !== "")
    .reduce((all, part) => {
      if (all === "") return part;
      return by === ". " && /[.!?…”]$/.test(all) ? `${all} ${part}` : `${all}${by}${part}`;
    }, "");
}
