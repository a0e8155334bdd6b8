import type { Estimate } from "../../dating/estimate.ts";
import type { Alignment } from "../../photographs/alignment.ts";
import type { Photograph } from "../../photographs/photograph.ts";
import type { Region } from "../../photographs/region.ts";
import type { SizeEstimate } from "../../sizes/estimate-size.ts";
import type { FoundAnomaly, Notice, ProvenanceCheck } from "../derived.ts";
import type { FileEvidence } from "../evidence.ts";
import type { Caution } from "../finding.ts";
import type { KeptFile } from "../kept-file.ts";
import type { MatchedEntry } from "../matched-entry.ts";
import type { Room } from "./room.ts";

/** A photograph of the very revision that a mark is pinned to. */
export type MarkReference = {
  readonly photograph: Photograph;
  /** One of the file's own photographs, by its SHA-256, laid over it; null when none could be. */
  readonly laid: { readonly own: string; readonly region: Region; readonly alignment: Alignment } | null;
};

/** What is reckoned by: rules of dating and sizes, tables of the decoders, the checklist of the object's family. */
export const TABLES = ["rules", "decoders", "checklist"] as const;

/** What a report is made of: a file, and what the reference and the tables say. */
export type ReportSource = {
  readonly kept: Pick<KeptFile, "id" | "owner" | "version" | "hash" | "updatedAt" | "content">;
  readonly entries: readonly MatchedEntry[];
  readonly thisYear: number;
  /** What each mark is compared with, by the mark's id. */
  readonly references: Readonly<Record<string, MarkReference>>;
  /** Where the host is reached, for permanent addresses: no slash at its end. */
  readonly host: string;
  /** SHA-256 over the tables and rules by which is reckoned. */
  readonly tables: Readonly<Record<(typeof TABLES)[number], string>>;
  readonly language: string;
};

/** The same with everything that follows from it. */
export type ReportParts = ReportSource & {
  readonly file: KeptFile["content"];
  readonly room: Room;
  readonly evidence: readonly FileEvidence[];
  readonly estimate: Estimate;
  readonly found: readonly FoundAnomaly[];
  readonly check: ProvenanceCheck;
  readonly notices: readonly Notice[];
  readonly sizes: SizeEstimate | null;
  readonly cautions: readonly Caution[];
};
