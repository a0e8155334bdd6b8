import { type Day, daysInMonth } from "./day.ts";
import { SEASONS } from "./seasons.ts";

/** What is known of a day: digits, with `X` for one that is not; no month, or no day, is any. */
export type KnownDigits = {
  readonly isBefore0: boolean;
  readonly year: string;
  readonly month: string | undefined;
  readonly day: string | undefined;
};
type Edge = "first" | "last";

/** After so many years every kind of year, leap or not, has been met. */
const ENOUGH_YEARS = 400;
const A_LEAP_YEAR = 2000;

/** The first day, or the last, that agrees with what is known; null when no year has such a day. */
export function outermostDay({ isBefore0, year: digits, month, day }: KnownDigits, edge: Edge): Day | null {
  const isUpwards = (edge === "first") !== isBefore0;
  const season = month === undefined ? undefined : SEASONS[Number(month)];
  const days = season ? [] : daysOfYear(month, day, edge);
  let tried = 0;
  for (const number of numbersOf(digits, isUpwards)) {
    if (isBefore0 && number === 0) continue;
    const year = isBefore0 ? -number : number;
    if (season) return edgeOfMonth(year, season[edge], edge);
    const found = days.find((each) => each.day <= daysInMonth(year, each.month));
    if (found) return { year, ...found };
    tried++;
    if (days.length === 0 || tried > ENOUGH_YEARS) return null;
  }
  return null;
}

/** Every month and day that a leap year has and the digits allow, in order from the edge. */
function daysOfYear(month: string | undefined, day: string | undefined, edge: Edge) {
  const all = [...numbersOf(month ?? "XX", true)].flatMap((m) =>
    m < 1 || m > 12
      ? []
      : [...numbersOf(day ?? "XX", true)]
          .filter((d) => d >= 1 && d <= daysInMonth(A_LEAP_YEAR, m))
          .map((d) => ({ month: m, day: d })),
  );
  return edge === "first" ? all : all.reverse();
}

/** The numbers that digits with `X` can be, upwards or downwards. */
function* numbersOf(digits: string, isUpwards: boolean, before = 0): Generator<number> {
  if (digits === "") {
    yield before;
    return;
  }
  const head = digits[0];
  const choices = head === "X" ? [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] : [Number(head)];
  for (const digit of isUpwards ? choices : choices.reverse())
    yield* numbersOf(digits.slice(1), isUpwards, before * 10 + digit);
}

function edgeOfMonth(year: number, monthFromJanuary: number, edge: Edge): Day {
  const later = Math.floor((monthFromJanuary - 1) / 12);
  const month = monthFromJanuary - later * 12;
  return { year: year + later, month, day: edge === "first" ? 1 : daysInMonth(year + later, month) };
}
