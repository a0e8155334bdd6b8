import type { ListName } from "./object-file.ts";

/** Something in the file that a sentence speaks of. */
export type ItemRef = { readonly list: ListName | "line"; readonly id: string };

/** A sentence to be made of messages: `objects.<group>.<is>` with its params. */
export type Said<K extends string = string> = {
  readonly is: K;
  readonly params: Readonly<Record<string, string | number>>;
  readonly items: readonly ItemRef[];
};

/** Names of params that hold a date in EDTF, or "none". */
const DATE_PARAMS: ReadonlySet<string> = new Set([
  ...["date", "from", "to", "notBefore", "notAfter", "first", "before"],
]);

/** Params with their dates put into words. */
export function withDatesWorded<T>(
  params: Said["params"],
  word: (edtf: string) => T,
): Readonly<Record<string, T | string | number>> {
  const worded = Object.entries(params).map(([name, value]): [string, T | string | number] => [
    name,
    DATE_PARAMS.has(name) && typeof value === "string" && value !== "none" ? word(value) : value,
  ]);
  return Object.fromEntries(worded);
}

/** Params as messages can choose by them: what is not known is "none". */
export function saying(params: Said["params"]): Said["params"] {
  return Object.fromEntries(
    Object.entries(params).map(([name, value]) => [name, value === "" ? "none" : value]),
  );
}

/** An explanation of an anomaly, with what in the file speaks for and against it; `objects.explanation.<id>` names it. */
export type Explanation = {
  readonly id: string;
  /** `objects.argument.<is>`. */
  readonly for: readonly Said[];
  readonly against: readonly Said[];
};

export const ANOMALIES = [
  "doubled-mark",
  "two-makers",
  "mark-too-young",
  "label-too-young",
  "size-not-catalogued",
  "mark-out-of-place",
  "reproduction-near",
  "story-against-date",
] as const;
export type AnomalyKind = (typeof ANOMALIES)[number];

/** Something that the program found not to fit; `objects.anomaly.<is>` says it. It never picks an explanation. */
export type FoundAnomaly = Said<AnomalyKind> & {
  /** The same as long as it is about the same items: stances are kept by it. */
  readonly key: string;
  readonly explanations: readonly Explanation[];
};

/** What is wrong with, or missing in, the chain of owners; `objects.provenance.<is>` says it. */
export const PROVENANCE_REMARKS = [
  "gap-at-start",
  "gap",
  "gap-marked",
  "undated",
  "without-document",
  "out-of-order",
  "owner-loop",
  "owner-returns",
  "owner-breaks",
  "before-it-was-made",
  "made-against-object",
  "told-later",
] as const;
export type ProvenanceRemark = Said<(typeof PROVENANCE_REMARKS)[number]>;

/** A step of the chain, and how it follows on the one before. */
export type ChainStep = {
  readonly event: string;
  /** "direct" is written with a semicolon, "not known to be direct" with a full stop, a gap with three points. */
  readonly joined: "first" | "direct" | "not known to be direct" | "gap";
};

export type ProvenanceCheck = {
  readonly chain: readonly ChainStep[];
  readonly gaps: readonly ProvenanceRemark[];
  readonly contradictions: readonly ProvenanceRemark[];
  /** What is worth asking and is no contradiction. */
  readonly questions: readonly ProvenanceRemark[];
};

export const NOTICES = ["revised", "superseded", "disputed", "withdrawn", "not accepted", "gone"] as const;
/** Something happened to an entry since it was pinned; `objects.notice.<is>` says it. */
export type Notice = Said<(typeof NOTICES)[number]>;
