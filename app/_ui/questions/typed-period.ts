import { parseInterval } from "#core/dates/parse";
import { wordPeriod } from "../period-words.tsx";

/** A period as a proposer typed it, in words where it is EDTF; `t` is bound to the messages under "period". */
export function wordTypedPeriod(typed: string, t: Parameters<typeof wordPeriod>[1]): string {
  const parsed = parseInterval(typed);
  return parsed.ok ? wordPeriod(parsed.value, t) : typed;
}
