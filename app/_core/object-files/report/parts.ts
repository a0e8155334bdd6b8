import type { Estimate } from "../../dating/estimate.ts";
import type { Photograph } from "../../photographs/photograph.ts";
import type { SizeEstimate } from "../../sizes/estimate-size.ts";
import type { FoundAnomaly, Notice, ProvenanceCheck } from "../derived.ts";
import type { FileEvidence } from "../evidence.ts";
import type { Caution } from "../finding.ts";
import type { KeptFile } from "../kept-file.ts";
import type { MatchedEntry } from "../matched-entry.ts";

/** What a report is made of: a file, and what the reference and the tables say. */
export type ReportSource = {
  readonly kept: Pick<KeptFile, "id" | "owner" | "version" | "hash" | "updatedAt" | "content">;
  readonly entries: readonly MatchedEntry[];
  readonly thisYear: number;
  /** A photograph of the very revision that a mark is pinned to, by the entry's slug. */
  readonly references: Readonly<Record<string, Photograph>>;
  /** Where the host is reached, for permanent addresses: no slash at its end. */
  readonly host: string;
  /** SHA-256 over the tables and rules by which is reckoned. */
  readonly tables: string;
  readonly language: string;
};

/** The same with everything that follows from it. */
export type ReportParts = ReportSource & {
  readonly file: KeptFile["content"];
  readonly evidence: readonly FileEvidence[];
  readonly estimate: Estimate;
  readonly found: readonly FoundAnomaly[];
  readonly check: ProvenanceCheck;
  readonly notices: readonly Notice[];
  readonly sizes: SizeEstimate | null;
  readonly cautions: readonly Caution[];
};
