import { readWords } from "./words/read-words.ts";

/**
 * What somebody may have meant who wrote a period the ordinary way, in EDTF; null when it can't be guessed.
 * A century is given as its hundred years (`19th century` as `18XX`), as EDTF writes it.
 */
export const suggestPeriod = (text: string): string | null => readWords(text);
