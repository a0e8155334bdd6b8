import { CONVENTIONS } from "../sizes/line.ts";

/** Families of objects; each has a checklist. */
export const FAMILIES = [
  "soft toys",
  "tin and wooden toys",
  "ceramics",
  "silver and base metal",
  "glass",
  "textiles and labels",
  "clocks and instruments",
  "furniture",
] as const;
export type Family = (typeof FAMILIES)[number];

/** What came of looking. Absent is evidence too; what nobody looked for is none. */
export const OBSERVED = ["seen", "absent", "not examined"] as const;
export type Observed = (typeof OBSERVED)[number];

/** What was measured: a length in millimetres, or the weight in grams. */
export const MEASURED = [...CONVENTIONS, "depth", "weight"] as const;
export type Measured = (typeof MEASURED)[number];

/** Whether a base, stand or lid was measured with it. */
export const BASES_MEASURED = ["no base", "with base", "without base"] as const;
export type BaseMeasured = (typeof BASES_MEASURED)[number];

/** Whether what is marked was part of the object from the first. */
export const BELONGINGS = ["from the first", "added later", "not known"] as const;
export type Belonging = (typeof BELONGINGS)[number];

/** What can have happened to an object. */
export const EVENTS = [
  "made",
  "sold",
  "given",
  "inherited",
  "moved",
  "repaired",
  "exhibited",
  "photographed",
] as const;
export type EventKind = (typeof EVENTS)[number];

/** How sure a step of the provenance is, and how it passed, as museums write it. */
export const QUALIFIERS = ["certain", "probably", "possibly", "by tradition"] as const;
export type Qualifier = (typeof QUALIFIERS)[number];
export const PASSAGES = [
  "not known",
  "sold to",
  "given to",
  "by descent to",
  "by bequest to",
  "by exchange to",
  "lent to",
] as const;
export type Passage = (typeof PASSAGES)[number];

/** What stands behind a step. */
export const DOCUMENTS = [
  "letter",
  "snapshot",
  "album page",
  "receipt",
  "label",
  "interview",
  "advertisement",
  "catalogue page",
  "inventory",
  "other",
] as const;
export type DocumentKind = (typeof DOCUMENTS)[number];

/** What a scan of a document may be, as its bytes say. */
export const SCAN_TYPES = [
  "image/jpeg",
  "image/png",
  "image/webp",
  "image/tiff",
  "image/avif",
  "image/gif",
] as const;
export type ScanType = (typeof SCAN_TYPES)[number];

/** What has become of it. */
export const CONDITIONS = [
  "complete",
  "worn",
  "faded",
  "stained",
  "cracked",
  "chipped",
  "broken",
  "bent or dented",
  "corroded",
  "flaking",
  "torn",
  "insect damage",
  "loss",
  "replaced part",
  "repaired",
  "restored surface",
  "does not work",
  "working",
] as const;
export type Condition = (typeof CONDITIONS)[number];
export const EXTENTS = ["slight", "moderate", "heavy"] as const;
export type Extent = (typeof EXTENTS)[number];

/** What the examiner thinks of an explanation. */
export const WEIGHTS = ["very likely", "likely", "possible", "unlikely", "ruled out"] as const;
export type Weight = (typeof WEIGHTS)[number];

/** The trade's ladder of certainty, from the top. */
export const RUNGS = [
  "by",
  "marked by",
  "attributed to",
  "in the manner of",
  "after",
  "not determined",
] as const;
export type Rung = (typeof RUNGS)[number];

/** What a photograph shows, besides the object as a whole. */
export const PHOTOGRAPH_OF = ["whole", "point", "mark", "condition", "event", "anomaly"] as const;
export type PhotographSubject = (typeof PHOTOGRAPH_OF)[number];
