import { parseInterval } from "#core/dates/parse";
import { wordPeriod } from "./period-words.tsx";

/** EDTF in words; as it stands when it can't be read. `t` is bound to the messages under "period". */
export function wordEdtf(edtf: string, t: Parameters<typeof wordPeriod>[1]): string {
  const parsed = parseInterval(edtf);
  return parsed.ok ? wordPeriod(parsed.value, t) : edtf;
}
