import { dayOf, daysInMonth, isoDay } from "../dates/day.ts";

/** Months are counted from the beginning of year 0 on; year y is the twelve from 12 y on. */
export const MONTHS = 12 as const;

/** The month a day lies in. */
export function monthOf(day: string): number {
  const { year, month } = dayOf(day);
  return MONTHS * year + month - 1;
}

/** A number that grows with the day: for comparing, not for counting. */
export function dayOrder(day: string): number {
  const parts = dayOf(day);
  return (MONTHS * parts.year + parts.month - 1) * 32 + parts.day;
}

export function firstDayOfMonth(months: number): string {
  return isoDay({ ...yearAndMonth(months), day: 1 });
}

export function lastDayOfMonth(months: number): string {
  const { year, month } = yearAndMonth(months);
  return isoDay({ year, month, day: daysInMonth(year, month) });
}

function yearAndMonth(months: number): { readonly year: number; readonly month: number } {
  const year = Math.floor(months / MONTHS);
  return { year, month: months - MONTHS * year + 1 };
}
