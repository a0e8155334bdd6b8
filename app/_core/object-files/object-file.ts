import type { Piece } from "../dating/piece.ts";
import type { Kind, Technique } from "../entries/vocabulary.ts";
import type { CataloguedLine } from "../sizes/line.ts";
import type {
  BaseMeasured,
  Belonging,
  Condition,
  DocumentKind,
  EventKind,
  Extent,
  Family,
  Measured,
  Observed,
  Passage,
  PhotographSubject,
  Qualifier,
  Rung,
  ScanType,
  Weight,
} from "./vocabulary.ts";

/**
 * Everything a file says of one object: plain values that JSON can hold, so that a version can be kept and hashed.
 * Dates are EDTF texts that `parseInterval` has read; ids are given by who adds an item.
 */
export type ObjectFile = {
  readonly title: string;
  readonly family: Family;
  readonly description: string;
  readonly line: FileLine | null;
  readonly photographs: readonly FilePhotograph[];
  readonly observations: readonly Observation[];
  readonly measurements: readonly FileMeasurement[];
  readonly marks: readonly MarkFound[];
  /** In the order in which they are taken to have happened. */
  readonly events: readonly ProvenanceEvent[];
  readonly documents: readonly FileDocument[];
  /** Dated evidence taken from a worksheet. */
  readonly pieces: readonly EvidencePiece[];
  readonly conditions: readonly ConditionNote[];
  readonly anomalies: readonly WrittenAnomaly[];
  readonly stances: readonly Stance[];
  readonly finding: Finding | null;
};

/** The product the object is compared with, as a catalogue gives it. */
export type FileLine = CataloguedLine & {
  readonly name: string;
  /** Years made, EDTF; null when the catalogue does not say. */
  readonly made: string | null;
  readonly source: string;
};

export type FilePhotograph = {
  readonly id: string;
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly shows: string;
  readonly credit: string;
  readonly of: PhotographSubject;
  /** Id of the checklist's point or of the item; null for the object as a whole. */
  readonly item: string | null;
};

/** What came of looking for one thing. */
export type Observation = {
  readonly id: string;
  /** Id of a point of the family's checklist; null for something of one's own, which `what` names. */
  readonly point: string | null;
  readonly what: string;
  readonly observed: Observed;
  /** Id of one of the point's options; null when none was chosen. */
  readonly option: string | null;
  /** What was seen, in words, or as it stands on the object. */
  readonly value: string;
  readonly note: string;
};

type Point = { readonly x: number; readonly y: number };
export type Stretch = readonly [Point, Point];

/** Two points on a scale and two on the object, in pixels of the photograph. */
export type OnScreen = {
  readonly photograph: string;
  readonly scale: Stretch;
  readonly scaleMm: number;
  readonly object: Stretch;
  /** How far off each point may have been set, in pixels. */
  readonly pointWithin: number;
};

export type FileMeasurement = {
  readonly id: string;
  readonly measured: Measured;
  /** What part was measured; empty for the whole. */
  readonly part: string;
  readonly base: BaseMeasured;
  /** Millimetres, or grams of a weight; `within` is how far off it may be to either side. */
  readonly amount: number;
  readonly within: number;
  /** As it was typed, "6 1/2 in"; empty when it was measured on screen. */
  readonly typed: string;
  readonly onScreen: OnScreen | null;
  readonly note: string;
};

export type MarkFound = {
  readonly id: string;
  readonly kind: Kind;
  readonly technique: Technique | null;
  readonly place: string;
  readonly words: string;
  readonly description: string;
  readonly belongs: Belonging;
  readonly match: PinnedMatch | null;
};

/** An entry accepted as the mark's, as it was on that day. */
export type PinnedMatch = {
  readonly entry: string;
  readonly title: string;
  readonly revision: PinnedRevision;
  /** The look-up it came from; null when it was chosen by hand. */
  readonly lookUp: string | null;
  readonly model: { readonly name: string; readonly version: string } | null;
  readonly probability: number | null;
  /** Others that the look-up found near, the nearest first. */
  readonly near: readonly { readonly entry: string; readonly title: string; readonly probability: number }[];
};
export type PinnedRevision = { readonly id: string; readonly number: number; readonly contentHash: string };

export type ProvenanceEvent = {
  readonly id: string;
  readonly kind: EventKind;
  /** EDTF; null when nobody knows. */
  readonly date: string | null;
  /** The date as it was told: "Easter 1921". */
  readonly dateTyped: string;
  readonly place: string;
  /** Who had it before and after; `to` alone where somebody is only said to have had it. */
  readonly from: string;
  readonly to: string;
  readonly passage: Passage;
  readonly qualifier: Qualifier;
  /** Something is known to be missing before this step. */
  readonly gapBefore: boolean;
  readonly told: string;
  /** Ids of documents. */
  readonly documents: readonly string[];
};

export type FileDocument = {
  readonly id: string;
  readonly kind: DocumentKind;
  readonly title: string;
  readonly date: string | null;
  readonly dateTyped: string;
  readonly transcription: string;
  readonly vouchedBy: string;
  /** Where the original is. */
  readonly keptAt: string;
  readonly scans: readonly Scan[];
};
export type Scan = {
  readonly id: string;
  readonly sha256: string;
  readonly type: ScanType;
  readonly name: string;
};

/** A piece of a worksheet, with what it said there; facts read off one thing share a group in the file. */
export type EvidencePiece = Piece & { readonly id: string };

export type ConditionNote = {
  readonly id: string;
  readonly condition: Condition;
  readonly extent: Extent;
  readonly place: string;
  readonly note: string;
};

/** Something that does not fit, as the examiner sees it. */
export type WrittenAnomaly = {
  readonly id: string;
  readonly says: string;
  readonly explanations: readonly WrittenExplanation[];
};
export type WrittenExplanation = {
  readonly id: string;
  readonly says: string;
  readonly for: string;
  readonly against: string;
};

/** What the examiner thinks of one explanation of one anomaly: the program never does. */
export type Stance = {
  readonly id: string;
  /** Key of a found anomaly, or id of a written one. */
  readonly anomaly: string;
  readonly explanation: string;
  readonly weight: Weight;
  readonly reason: string;
};

export type Finding = {
  readonly rung: Rung;
  /** Empty when not determined. */
  readonly maker: string;
  /** Slug of the maker's page, when the reference has one. */
  readonly makerSlug: string | null;
  readonly says: string;
  /** The examiner's own date, with reasons, where it differs from the estimate; null takes the estimate. */
  readonly ownDate: { readonly edtf: string; readonly typed: string; readonly reasons: string } | null;
  /** Name of a catalogued size; null when undecided. */
  readonly size: string | null;
  readonly doubts: string;
  readonly by: { readonly id: string; readonly name: string };
  readonly at: string;
  /** The revisions that it stands on: those pinned when it was stated. */
  readonly revisions: readonly { readonly entry: string; readonly revision: PinnedRevision }[];
};

/** The lists of a file, each of items with an id. */
export const LISTS = [
  "photographs",
  "observations",
  "measurements",
  "marks",
  "events",
  "documents",
  "pieces",
  "conditions",
  "anomalies",
  "stances",
] as const;
export type ListName = (typeof LISTS)[number];

/** A file of which nothing is known yet. */
export function emptyFile(title: string, family: Family): ObjectFile {
  return {
    ...{ title, family, description: "", line: null },
    ...{ photographs: [], observations: [], measurements: [], marks: [], events: [], documents: [] },
    ...{ pieces: [], conditions: [], anomalies: [], stances: [], finding: null },
  };
}
