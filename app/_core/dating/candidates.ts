import type { DatedEvent, EvidenceKind } from "./evidence.ts";

/** A kind of evidence that may be missing, as it usually turns out when it is found. */
export type Candidate = {
  /** Names it in messages: `worksheet.candidates.<id>`. */
  readonly id: string;
  readonly kind: EvidenceKind;
  readonly event: DatedEvent;
  /** Over how many years its date usually spreads. */
  readonly years: number;
  readonly reliability: number;
};

/** What may be looked for; widths and reliabilities are common practice in numbers. */
export const CANDIDATES = [
  { id: "date-letter", kind: "hallmark", event: "marked", years: 1, reliability: 0.97 },
  { id: "dated-by-maker", kind: "other", event: "made", years: 1, reliability: 0.95 },
  { id: "receipt", kind: "story", event: "sold", years: 1, reliability: 0.95 },
  { id: "catalogue-line", kind: "catalogue-line", event: "made", years: 8, reliability: 0.9 },
  { id: "mark-period", kind: "mark", event: "marked", years: 12, reliability: 0.9 },
  { id: "label-wording", kind: "wording", event: "labelled", years: 20, reliability: 0.95 },
  { id: "photograph", kind: "photograph", event: "photographed", years: 3, reliability: 0.9 },
  { id: "gift-note", kind: "story", event: "given", years: 2, reliability: 0.8 },
  { id: "maker-years", kind: "maker", event: "made", years: 30, reliability: 0.95 },
] as const satisfies readonly Candidate[];
