import type { DatedEvent, EvidenceKind } from "./evidence.ts";

/**
 * What evidence of a kind usually dates, and how often it is right of the object it stands on. The shares are common
 * practice put into numbers, offered as a beginning: whoever adds a piece sees and changes them.
 */
export const USUAL: Readonly<
  Record<EvidenceKind, { readonly event: DatedEvent; readonly reliability: number }>
> = {
  mark: { event: "marked", reliability: 0.95 },
  wording: { event: "labelled", reliability: 0.95 },
  number: { event: "marked", reliability: 0.95 },
  hallmark: { event: "marked", reliability: 0.99 },
  "catalogue-line": { event: "made", reliability: 0.9 },
  material: { event: "made", reliability: 0.8 },
  construction: { event: "made", reliability: 0.8 },
  maker: { event: "made", reliability: 0.95 },
  story: { event: "given", reliability: 0.65 },
  photograph: { event: "photographed", reliability: 0.9 },
  repair: { event: "repaired", reliability: 0.8 },
  address: { event: "labelled", reliability: 0.95 },
  other: { event: "made", reliability: 0.8 },
};

/** The steps offered for how reliable a piece is; each has a word. */
export const RELIABILITIES = [0.999, 0.99, 0.95, 0.9, 0.8, 0.65, 0.5] as const;
