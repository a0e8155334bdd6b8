/** Months are counted from the beginning of year 0 on; year y is the twelve from 12 y on. */
export const MONTHS = 12 as const;

/** `YYYY-MM-DD`, astronomical years, with a sign before years below 0 and of more than four digits. */
export function readDay(day: string): {
  readonly year: number;
  readonly month: number;
  readonly day: number;
} {
  const parts = /^([+-]?\d{4,})-(\d{2})-(\d{2})$/.exec(day);
  if (!parts) throw new Error(`Not a day: ${day}`);
  return { year: Number(parts[1]), month: Number(parts[2]), day: Number(parts[3]) };
}

/** The month a day lies in. */
export function monthOf(day: string): number {
  const { year, month } = readDay(day);
  return MONTHS * year + month - 1;
}

/** A number that grows with the day: for comparing, not for counting. */
export function dayOrder(day: string): number {
  const parts = readDay(day);
  return (MONTHS * parts.year + parts.month - 1) * 32 + parts.day;
}

export function firstDayOf(year: number): string {
  return `${yearText(year)}-01-01`;
}

export function lastDayOf(year: number): string {
  return `${yearText(year)}-12-31`;
}

function yearText(year: number): string {
  const digits = String(Math.abs(year)).padStart(4, "0");
  if (year < 0) return `-${digits}`;
  return digits.length > 4 ? `+${digits}` : digits;
}
