/** A day of the Gregorian calendar, carried back before 1582 as EDTF does. Year 0 is 1 BCE. */
export type Day = { readonly year: number; readonly month: number; readonly day: number };

const MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

const isLeap = (year: number) => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

export function daysInMonth(year: number, month: number): number {
  return month === 2 && isLeap(year) ? 29 : (MONTHS[month - 1] ?? 0);
}

export function compareDays(a: Day, b: Day): number {
  return a.year - b.year || a.month - b.month || a.day - b.day;
}

/** `1911-03-12`; years before 0 and of more than four digits as they are, without a plus. */
export function isoDay({ year, month, day }: Day): string {
  const digits = String(Math.abs(year)).padStart(4, "0");
  return `${year < 0 ? "-" : ""}${digits}-${two(month)}-${two(day)}`;
}

const two = (n: number) => String(n).padStart(2, "0");

/** Reads what `isoDay` writes. */
export function dayOf(iso: string): Day {
  const [, year, month, day] = /^(-?\d+)-(\d\d)-(\d\d)$/.exec(iso) ?? [];
  return { year: Number(year), month: Number(month), day: Number(day) };
}

/** Where the morning of a day lies among years, each from its 1 January: 1911-07-02 is 1911.499. */
export function inYears({ year, month, day }: Day): number {
  let before = day - 1;
  for (let m = 1; m < month; m++) before += daysInMonth(year, m);
  return year + before / (isLeap(year) ? 366 : 365);
}

/** The day after, so that an end which counts can be written as the morning on which it is over. */
export function dayAfter({ year, month, day }: Day): Day {
  if (day < daysInMonth(year, month)) return { year, month, day: day + 1 };
  return month < 12 ? { year, month: month + 1, day: 1 } : { year: year + 1, month: 1, day: 1 };
}
