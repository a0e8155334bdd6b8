/** A line of this many letters at most is also searched as one word: initials are written together as often as apart. */
const SHORT = 10;

/**
 * The forms under which initials are looked for, lower case and without points: `H.C.CO.` gives `hcco` and `hc`,
 * `T B / CARNHYTHE` gives `tb`.
 * @param words a transcription, lines parted by `/`
 */
export function joinInitials(words: string): readonly string[] {
  const found = new Set<string>();
  for (const line of words.toLowerCase().split("/")) {
    const parts = line.split(/[^\p{L}\p{N}]+/u).filter((part) => part !== "");
    const whole = parts.join("");
    if (parts.length > 1 && whole.length <= SHORT) found.add(whole);
    let run = "";
    for (const part of [...parts, "--"]) {
      if (part.length === 1) run += part;
      else {
        if (run.length > 1) found.add(run);
        run = "";
      }
    }
  }
  return [...found];
}
