const FORMS: readonly (readonly [RegExp, (...years: string[]) => string])[] = [
  [/^(\d{4})\s*(?:-|–|—|\.\.|to|until)\s*(\d{4})$/, (a, b) => `${a}/${b}`],
  [/^(\d{4})\s*(?:-|–|—)\s*(\d{2})$/, (a = "", b) => `${a}/${a.slice(0, 2)}${b}`],
  [/^(\d{3})0s$/, (a) => `${a}X`],
  [/^(?:c|ca|circa|about|around)\.?\s*(\d{4})$/, (a) => `${a}~`],
  [/^(?:before|until|to)\s+(\d{4})$/, (a) => `../${a}`],
  [/^(?:after|from|since)\s+(\d{4})$/, (a) => `${a}/..`],
  [/^(\d{1,2})(?:st|nd|rd|th)\s+c(?:entury|\.)?$/, (a) => `${String(Number(a) - 1).padStart(2, "0")}XX`],
];

/**
 * What somebody may have meant who wrote a period the ordinary way, in EDTF; null when it can't be guessed.
 * A century is given as its hundred years (`19th century` as `18XX`), as EDTF writes it.
 */
export function suggestPeriod(text: string): string | null {
  const typed = text.trim().toLowerCase();
  for (const [form, write] of FORMS) {
    const years = form.exec(typed);
    if (years) return write(...years.slice(1));
  }
  return null;
}
