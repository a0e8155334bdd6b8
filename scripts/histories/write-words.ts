import type { Random } from "../../seed/render/random.ts";
import type { Reason } from "./reasons.ts";
import type { Subject } from "./story.ts";

/** The entry's own words that a sentence may use; an empty one keeps a sentence that needs it from being used. */
function wordsOf({ content, maker }: Subject): Readonly<Record<string, string>> {
  const years = content.period?.match(/\d{4}/g) ?? [];
  const [first = "", last = ""] = [years[0], years.at(-1)];
  const [citation] = content.citations;
  const stated = citation ? [citation.author, citation.title].filter(Boolean).join(", ") : content.sources[0];
  return {
    maker,
    material: content.material,
    place: content.placeOnObject.split(/[;,]/, 1)[0]?.trim() ?? "",
    emblem: content.emblem.split(/[;,]/, 1)[0]?.trim() ?? "",
    frame: content.frame,
    words: content.words === "" ? "" : `“${content.words}”`,
    from: first,
    years: first === last ? "" : `${first} to ${last}`,
    begins: content.periodFromReason,
    ends: content.periodToReason,
    source: stated ?? "",
  };
}

const NAMED = /\{(\w+)\}/g;

export function fill(text: string, subject: Subject): string {
  const words = wordsOf(subject);
  return text.replace(NAMED, (_, name: string) => words[name] || "the piece");
}

function fits(
  reason: Reason & { readonly answer?: string },
  { content, has }: Subject,
  words: Readonly<Record<string, string>>,
): boolean {
  const said = `${reason.text} ${reason.answer ?? ""}`;
  if (reason.of && (content.technique === null || !reason.of.includes(content.technique))) return false;
  if (reason.in && !content.material.includes(reason.in)) return false;
  if (/three photographs|third photograph/.test(said) && has.photographs < 3) return false;
  if (/letter|wording/.test(said) && content.words === "") return false;
  if (/\bframe/.test(said) && content.frame === "") return false;
  return [...said.matchAll(NAMED)].every(([, name]) => (words[name ?? ""] ?? "") !== "");
}

/** Chooses sentences that fit an entry: never one twice within it, and the ones used least so far before others. */
export function createChooser(random: Random) {
  const used = new Map<string, number>();
  return <R extends Reason>(reasons: readonly R[], subject: Subject, taken: Set<string>): R => {
    const words = wordsOf(subject);
    const free = reasons.filter((reason) => !taken.has(reason.text) && fits(reason, subject, words));
    const least = Math.min(...free.map(({ text }) => used.get(text) ?? 0));
    const chosen = random.pick(free.filter(({ text }) => (used.get(text) ?? 0) <= least + 1));
    taken.add(chosen.text);
    used.set(chosen.text, (used.get(chosen.text) ?? 0) + 1);
    return chosen;
  };
}

export type Chooser = ReturnType<typeof createChooser>;
