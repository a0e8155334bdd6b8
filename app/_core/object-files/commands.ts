import type {
  ConditionNote,
  EvidencePiece,
  FileDocument,
  FileLine,
  FileMeasurement,
  FilePhotograph,
  Finding,
  ListName,
  MarkFound,
  ObjectFile,
  Observation,
  PinnedMatch,
  ProvenanceEvent,
  Scan,
  Stance,
  WrittenAnomaly,
} from "./object-file.ts";

/** The changes there are, by the last part of their addresses. */
export const COMMANDS = [
  ...(["describe", "line", "photograph", "observation", "measurement", "measure-on-screen"] as const),
  ...(["mark", "match", "event", "order", "document", "scan", "pieces", "condition"] as const),
  ...(["anomaly", "stance", "finding", "remove"] as const),
];
export type CommandName = (typeof COMMANDS)[number];

/**
 * One change of a file. What carries an item puts it in place of the one with its id, or adds it. `mark` leaves the
 * match alone and `document` the scans, which have commands of their own; so does `finding` with what it stands on.
 */
export type FileCommand =
  | ({ readonly is: "describe" } & Pick<ObjectFile, "title" | "family" | "description">)
  | { readonly is: "line"; readonly line: FileLine | null }
  | { readonly is: "photograph"; readonly item: FilePhotograph }
  | { readonly is: "observation"; readonly item: Observation }
  | { readonly is: "measurement"; readonly item: FileMeasurement }
  | { readonly is: "mark"; readonly item: Omit<MarkFound, "match"> }
  | { readonly is: "match"; readonly mark: string; readonly match: PinnedMatch | null }
  | { readonly is: "event"; readonly item: ProvenanceEvent }
  /** Puts an event before another; at the end with null. */
  | { readonly is: "order"; readonly event: string; readonly before: string | null }
  | { readonly is: "document"; readonly item: Omit<FileDocument, "scans"> }
  | { readonly is: "scan"; readonly document: string; readonly scan: Scan }
  /** All that a worksheet says; what the file has already from one is put in its place. */
  | { readonly is: "pieces"; readonly items: readonly EvidencePiece[] }
  | { readonly is: "condition"; readonly item: ConditionNote }
  | { readonly is: "anomaly"; readonly item: WrittenAnomaly }
  | { readonly is: "stance"; readonly item: Stance }
  | { readonly is: "finding"; readonly finding: Omit<Finding, "revisions"> | null }
  | { readonly is: "remove"; readonly list: ListName; readonly id: string }
  | { readonly is: "remove"; readonly list: "scans"; readonly document: string; readonly id: string };
