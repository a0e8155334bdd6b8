/** One unreadable letter, in a reading. */
export const ONE = "?";
/** Several unreadable letters, or none: in a reading, and in a transcription where the mark is worn away. */
export const SEVERAL = "*";

const UNREADABLE = /\[\s*(?:\.{2,}|…|\*|\?)?\s*\]|…/g;
const MARKS = /[\u0300-\u036f]/g;
/**
 * Signs that are no letters: punctuation, spaces, interpuncts, arrows and ornaments, by their places in Unicode. Listed
 * and not left to a class of the language, because the database takes the same list and its classes depend on how it
 * was set up. `&`, `*` and `?` are left out.
 */
const NO_LETTERS =
  /[\s\u0021-\u0025\u0027-\u0029\u002b-\u002f\u003a-\u003e\u0040\u005b-\u0060\u007b-\u00bf\u00d7\u00f7\u2000-\u2bff\u3000-\u303f]/g;
/** Letters that Unicode does not take apart, written as people without them write them. */
const TWO_FOR_ONE: Readonly<Record<string, string>> = {
  ß: "ss",
  æ: "ae",
  œ: "oe",
  ø: "o",
  ł: "l",
  đ: "d",
  ð: "d",
  þ: "th",
  ı: "i",
  // The form at the end of a word, which lower case writes instead of the other.
  ς: "σ",
};

/**
 * The letters, digits and `&` of a wording in the form in which wordings are compared: lower case, without accents,
 * spaces, punctuation and line breaks. What is unreadable (`[...]`) becomes one `*`.
 * @param wildcards whether `?` and `*` stand for what is unreadable, as in a reading; in a transcription they are signs
 * like others and fall away
 */
export function plainLetters(words: string, { wildcards }: { readonly wildcards: boolean }): string {
  // A star or a question mark of a transcription goes before the gaps become stars.
  const gaps = wildcards ? words : words.replace(/[?*](?![^[]*\])/g, " ");
  return gaps
    .replace(UNREADABLE, SEVERAL)
    .normalize("NFKD")
    .replace(MARKS, "")
    .toLowerCase()
    .replace(/[ßæœøłđðþıς]/g, (letter) => TWO_FOR_ONE[letter] ?? letter)
    .replace(NO_LETTERS, "")
    .replace(/\*+/g, SEVERAL);
}
