/** What an entry describes. */
export const KINDS = ["mark", "label", "construction detail"] as const;
export type Kind = (typeof KINDS)[number];

/** How the mark came onto the object. */
export const TECHNIQUES = [
  "stamped",
  "impressed",
  "incised",
  "printed",
  "painted",
  "cast",
  "etched",
  "woven",
  "embroidered",
  "paper",
  "applied",
  "other",
] as const;
export type Technique = (typeof TECHNIQUES)[number];

/** What the named maker did to the object. */
export const MAKER_PARTS = ["made", "decorated", "retailed", "assayed", "other"] as const;
export type MakerPart = (typeof MAKER_PARTS)[number];

/** Where an entry stands. Nothing counts as verified before a recorded peer review. */
export const ENTRY_STATES = [
  "draft",
  "under review",
  "verified",
  "disputed",
  "not accepted",
  "superseded",
  "withdrawn",
] as const;
export type EntryState = (typeof ENTRY_STATES)[number];

export type RelationKind = "preceded by" | "followed by" | "variant of" | "imitated by";

export const MAKER_KINDS = ["person", "workshop", "firm"] as const;
export type MakerKind = (typeof MAKER_KINDS)[number];

export const SUCCESSIONS = ["succession", "merger", "purchase", "inheritance"] as const;
export type Succession = (typeof SUCCESSIONS)[number];

/** Fields of competence: reviewers are appointed for some, every entry belongs to one. */
export const FIELDS = [
  "metalwork",
  "ceramics",
  "glass",
  "toys",
  "textiles",
  "paper and print",
  "clocks and instruments",
  "furniture",
  "other",
] as const;
export type Field = (typeof FIELDS)[number];

/** What a date in a source says of the use of a mark. */
export const DATED_SAYINGS = ["in use", "not before", "not after"] as const;
export type DatedSaying = (typeof DATED_SAYINGS)[number];

/** What a citation cites; a dated object is cited with who keeps it, what it is, and its inventory number. */
export const CITATION_KINDS = [
  "book",
  "catalogue",
  "archive document",
  "patent or register",
  "web page",
  "dated object",
] as const;
export type CitationKind = (typeof CITATION_KINDS)[number];
