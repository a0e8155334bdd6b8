import type { DatedStatement } from "../dating/evidence.ts";
import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Decoded, Note } from "./decoded.ts";
import { fillIn } from "./fill-reason.ts";
import { findNumbers } from "./numbers-in-text.ts";
import { RELIABILITY, type Strength } from "./reliability-policy.ts";
import type { Sourced } from "./sourced.ts";
import wording from "./tables/label-wording.json" with { type: "json" };

/** A wording or sign that law or custom dates. */
export type WordingRule = Sourced & {
  readonly id: string;
  readonly jurisdiction: string;
  readonly what: string;
  /** What the sign looks like, where it can't be typed. */
  readonly sign?: string;
  /** Regular expressions over the text without accents; one must be found. */
  readonly patterns: readonly string[];
  /** Wording with which another rule says it better. */
  readonly unless?: string;
  /** Capitals and small letters differ. */
  readonly cased?: boolean;
  /** Limits of the number that the pattern catches. */
  readonly between?: readonly number[];
  readonly examples: readonly string[];
  /** Missing where the law sets no date; `{1}` stands for what the pattern catches. */
  readonly edtf?: string;
  readonly strength: Strength | "context";
  readonly reason: string;
  readonly lag?: string;
  readonly exceptions?: string;
  /** A safety sign. */
  readonly unsafe?: boolean;
};

/** Says besides under which law the wording stands and what of the text it was found in. */
export type WordingStatement = DatedStatement & {
  readonly rule: string;
  readonly jurisdiction: string;
  readonly what: string;
  readonly found: string;
};

/** The text of a label as it stands, and signs that can't be typed, by the ids of their rules. */
export type WordingInput = { readonly text: string; readonly signs?: readonly string[] };

export const WORDING_RULES = wording as readonly WordingRule[];
export const SIGNS = WORDING_RULES.filter(({ sign }) => sign !== undefined);
const LONGEST = 2000;

/** Every rule that the words or signs on a label fulfil. */
export function decodeWording(input: WordingInput): Result<Decoded<WordingStatement>, FieldError> {
  const signs = input.signs ?? [];
  const text = plain(input.text);
  if (text.length > LONGEST)
    return fail({
      field: "wording",
      rule: "text-longest",
      received: received(input.text),
      params: { longest: LONGEST, length: text.length },
    });
  if (text === "" && signs.length === 0)
    return fail({ field: "wording", rule: "wording-empty", received: "" });
  const unknown = signs.find((id) => !SIGNS.some((rule) => rule.id === id));
  if (unknown !== undefined)
    return fail({
      field: "signs",
      rule: "one-of",
      received: received(unknown),
      params: { allowed: SIGNS.map(({ id }) => id).join(", ") },
    });
  const found = WORDING_RULES.flatMap((rule) => {
    const words = findIn(rule, text) ?? (signs.includes(rule.id) ? [rule.sign ?? rule.what] : null);
    return words === null ? [] : [{ rule, words }];
  });
  return ok({
    statements: found.flatMap(({ rule, words }) => stateWording(rule, words)).toSorted(byTelling),
    alternatives: [],
    notes: noteWording(
      found.map(({ rule }) => rule),
      findNumbers(text),
    ),
  });
}

/** The narrowest window first; of those with one open end, the one that leaves less. */
function byTelling(a: WordingStatement, b: WordingStatement): number {
  const leaves = ({ edtf }: WordingStatement) => {
    const [from = "", to = ""] = edtf.split("/").map((end) => end.slice(0, 4).replaceAll("X", "5"));
    if (to === "..") return 10_000 - Number(from);
    return from === ".." ? Number(to) : Number(to) - Number(from);
  };
  return leaves(a) - leaves(b);
}

/** Without accents and with single spaces: é is often printed as e, and a label is broken into lines anywhere. */
function plain(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/[\u0300-\u036f]/g, "")
    .replace(/[\u2010-\u2015]/g, "-")
    .replace(/\s+/g, " ")
    .trim();
}

/** @returns what was found of a rule, then what its pattern catches; null when it is not there */
function findIn(rule: WordingRule, text: string): readonly string[] | null {
  const flags = rule.cased ? "u" : "iu";
  if (rule.unless !== undefined && new RegExp(rule.unless, flags).test(text)) return null;
  for (const pattern of rule.patterns) {
    const found = new RegExp(pattern, flags).exec(text);
    if (found && isBetween(rule, Number(found[1]))) return [...found];
  }
  return null;
}

function isBetween({ between }: WordingRule, number: number): boolean {
  const [from, to] = between ?? [];
  return from === undefined || to === undefined || (number >= from && number <= to);
}

function stateWording(rule: WordingRule, words: readonly string[]): readonly WordingStatement[] {
  if (rule.strength === "context" || rule.edtf === undefined) return [];
  const caught = { 1: words[1] ?? "" };
  return [
    {
      kind: "wording",
      event: "labelled",
      edtf: fillIn(rule.edtf, caught),
      reliability: RELIABILITY[rule.basis][rule.strength],
      reason: fillIn(rule.reason, caught),
      source: rule.source,
      basis: rule.basis,
      exceptions: [rule.lag, rule.exceptions].filter((part) => part !== undefined).join(" "),
      rule: rule.id,
      jurisdiction: rule.jurisdiction,
      what: rule.what,
      found: (words[0] ?? "").trim(),
    },
  ];
}

function noteWording(rules: readonly WordingRule[], further: readonly Note[]): readonly Note[] {
  const unsafe: readonly Note[] = rules.some((rule) => rule.unsafe) ? [{ is: "unsafe" }] : [];
  const laws = rules
    .filter(({ strength }) => strength === "context")
    .map(({ reason, source }): Note => ({ is: "law", params: { text: reason, source } }));
  const none: readonly Note[] = rules.length === 0 && further.length === 0 ? [{ is: "nothing-known" }] : [];
  const dated = rules.filter(({ edtf }) => edtf !== undefined);
  const one: readonly Note[] = dated.length > 1 ? [{ is: "one-label" }] : [];
  return [...unsafe, ...further, ...one, ...none, ...laws];
}
