import { useTranslations } from "next-intl";
import type { Interval } from "#core/dates/interval";
import { parseInterval } from "#core/dates/parse";
import { wordPeriod } from "../period-words.tsx";

/** A statement's window as a dater says it: not before a day, not after one, or a period. */
export function WindowWords({ edtf }: { readonly edtf: string }) {
  const t = useTranslations("decoders.window");
  const period = useTranslations("period");
  return wordWindow(edtf, t, (interval) => wordPeriod(interval, period));
}

/** The same for attributes; `t` is bound to the messages under "decoders.window". */
export function wordWindow(
  edtf: string,
  t: ReturnType<typeof useTranslations<"decoders.window">>,
  say: (interval: Interval) => string,
): string {
  const words = (text: string) => {
    const interval = parseInterval(text);
    return interval.ok ? say(interval.value) : text;
  };
  const [from = "", to = ""] = edtf.split("/");
  if (to === "..") return t("notBefore", { when: words(from) });
  if (from === "..") return t("notAfter", { when: words(to) });
  return t("between", { when: words(edtf) });
}
