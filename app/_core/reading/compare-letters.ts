import type { LegibleLetters } from "./legible-letters.ts";
import { ONE, plainLetters, SEVERAL } from "./plain-letters.ts";

/**
 * How a reading agrees with a transcription: with all of it, with a part of it, nearly with a part, or not. A reading
 * in which several letters are missing agrees with a part at most.
 */
export type LettersDegree = "whole" | "part" | "near" | "not";
export type LettersAgreement = { readonly degree: LettersDegree; readonly differences: number };

/** One letter in so many may be read otherwise in a reading that still counts as near: worn E and F, C and G. */
const LETTERS_A_SLIP = 4;

/**
 * Compares what was read with what an entry transcribes.
 * @returns null when the entry transcribes no words: then the reading says nothing for or against it
 */
export function compareLetters(read: LegibleLetters, words: string): LettersAgreement | null {
  const transcription = plainLetters(words, { wildcards: false });
  if (transcription.replaceAll(SEVERAL, "") === "") return null;
  const complete = !read.pattern.includes(SEVERAL) && !transcription.includes(SEVERAL);
  if (complete && differences(read.pattern, transcription, "whole") === 0)
    return { degree: "whole", differences: 0 };
  const least = differences(read.pattern, transcription, "part");
  if (least === 0) return { degree: "part", differences: 0 };
  const near = least <= Math.floor(read.legible / LETTERS_A_SLIP);
  return { degree: near ? "near" : "not", differences: least };
}

/**
 * The fewest letters to be changed, added or left out for a reading to agree with a text, or with a part of it.
 * Wildcards on either side are free. Dynamic programming over the two, row by row: Sellers, "The theory and computation
 * of evolutionary distances: pattern recognition", Journal of Algorithms 1 (1980), with wildcards added.
 */
export function differences(pattern: string, text: string, against: "whole" | "part"): number {
  const signs = [...text];
  // The first row: nothing of the pattern against the first j signs of the text.
  let row = [0];
  for (const sign of signs) row.push(against === "part" ? 0 : last(row) + (sign === SEVERAL ? 0 : 1));
  for (const wanted of pattern) {
    const next = [(row[0] ?? 0) + (wanted === SEVERAL ? 0 : 1)];
    for (const [j, sign] of signs.entries()) {
      const free = wanted === SEVERAL || sign === SEVERAL;
      const changed = (row[j] ?? 0) + (free || wanted === ONE || wanted === sign ? 0 : 1);
      const leftOut = (row[j + 1] ?? 0) + (free ? 0 : 1);
      const added = last(next) + (free ? 0 : 1);
      next.push(Math.min(changed, leftOut, added));
    }
    row = next;
  }
  return against === "part" ? Math.min(...row) : last(row);
}

const last = (row: readonly number[]): number => row[row.length - 1] ?? 0;
