const ONE =
  /\b(?:one|a single|only one) (?:such )?mark\b|\b(?:struck|marked|stamped|printed) (?:only )?once\b/i;
const TWO = /\btwo (?:such )?marks\b|\b(?:struck|marked|stamped|printed) twice\b/i;

/** How many such marks an object bears, if the texts of an entry say so; null when they don't. */
export function marksSaid(texts: readonly string[]): number | null {
  const text = texts.join("\n");
  if (TWO.test(text)) return 2;
  return ONE.test(text) ? 1 : null;
}
