import { useTranslations } from "next-intl";
import { parseInterval } from "#core/dates/parse";
import { wordPeriod } from "../period-words.tsx";

/** Says a statement's window as a dater does: not before a day, not after one, or a period. */
export function useWindowWords(): (edtf: string) => string {
  const t = useTranslations("decoders.window");
  const period = useTranslations("period");
  const words = (text: string) => {
    const interval = parseInterval(text);
    return interval.ok ? wordPeriod(interval.value, period) : text;
  };
  return (edtf) => {
    const [from = "", to = ""] = edtf.split("/");
    if (to === "..") return t("notBefore", { when: words(from) });
    if (from === "..") return t("notAfter", { when: words(to) });
    return t("between", { when: words(edtf) });
  };
}
