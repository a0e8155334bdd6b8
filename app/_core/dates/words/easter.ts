/**
 * Easter Sunday of a year of the Gregorian calendar.
 * Source: "A New York Correspondent", Nature 13 (20 April 1876), 487, as given in S. Butcher, The Ecclesiastical
 * Calendar (1877), and in J. Meeus, Astronomical Algorithms (1991), chapter 8. Exact for every Gregorian year.
 */
export function easterSunday(year: number): { readonly month: number; readonly day: number } {
  const a = year % 19;
  const b = Math.floor(year / 100);
  const c = year % 100;
  const leapsOfCenturies = Math.floor(b / 4);
  const g = Math.floor((8 * b + 13) / 25);
  const h = (19 * a + b - leapsOfCenturies - g + 15) % 30;
  const l = (32 + 2 * (b % 4) + 2 * Math.floor(c / 4) - h - (c % 4)) % 7;
  const m = Math.floor((a + 11 * h + 22 * l) / 451);
  const month = Math.floor((h + l - 7 * m + 114) / 31);
  return { month, day: ((h + l - 7 * m + 114) % 31) + 1 };
}
