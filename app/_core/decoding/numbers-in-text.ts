import type { Note } from "./decoded.ts";

/** A run of digits as it stands on an object; shorter ones are years and sizes. */
const DIGITS = "\\d{1,3}(?:[,. ]\\d{3})+(?!\\d)|\\d{5,8}(?!\\d)";
const BEFORE = "(?<![\\p{L}\\d])";

/** How numbers that a decoder of their own reads are written among the words of a label. */
const FORMS: readonly (readonly [decoder: string, form: RegExp])[] = [
  [
    "us-design-patents",
    new RegExp(`${BEFORE}des(?:ign)?s?\\W*(?:pat(?:ent)?s?\\W*)?(?:no\\W*)?(?:${DIGITS})`, "iu"),
  ],
  [
    "us-patents",
    new RegExp(`(?<!des\\W{0,3})${BEFORE}pat(?:ent)?(?:d|ed|s)?\\W*(?:nos?\\W*)?(?:${DIGITS})`, "iu"),
  ],
  [
    "registered-designs",
    new RegExp(`${BEFORE}r(?:eg(?:istere)?)?d\\W*(?:des(?:ign)?\\W*)?(?:no\\W*)?(?:${DIGITS})`, "iu"),
  ],
  ["us-trade-marks", new RegExp(`(?<!pa\\W{0,3})${BEFORE}reg\\W*no\\W*(?:${DIGITS})`, "iu")],
];

/** Numbers in a text that say more when they are read by themselves, each with who reads it. */
export function findNumbers(text: string): readonly Note[] {
  return FORMS.flatMap(([decoder, form]): readonly Note[] => {
    const number = form.exec(text)?.[0];
    return number === undefined ? [] : [{ is: "read-further", params: { decoder, number } }];
  });
}
