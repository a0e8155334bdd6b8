import type { DatedEvent, EvidenceKind } from "./evidence.ts";

/** A part of the objects whose event lies a while away from their making: that while is exponential with this mean. */
type LagShare = { readonly share: number; readonly mean: number };

/** What an event says about the making of the object. */
export type EventModel = {
  /** Names the model in messages: `dating.model.<id>` says why it is so. */
  readonly id: string;
  /** The event lies before the making (a die cut, a label printed), at it, after it, or has nothing to do with it. */
  readonly side: "before" | "at" | "after" | "apart";
  /** How far from the making, in years; what the shares leave is at the same time. */
  readonly lags: readonly LagShare[];
  /** By how many years the stated ends themselves are out at most. */
  readonly soft: { readonly lower: number; readonly upper: number };
  /** Taken at its word: which ends of the period bound the making. `start` is where a lasting state began. */
  readonly bounds: { readonly lower: boolean; readonly upper: "end" | "start" | null };
};

const BOTH = { lower: true, upper: "end" } as const;
const BELOW = { lower: true, upper: null } as const;
const ABOVE = { lower: false, upper: "end" } as const;
const firm = { lower: 0, upper: 0 };

/**
 * The models, as data. The lags are the trade's common practice put into numbers, not measured: a mean of two years
 * for stock of labels says that three in four are used up within three.
 */
export const MODELS = {
  made: { id: "made", side: "at", lags: [], soft: firm, bounds: BOTH },
  line: { id: "line", side: "at", lags: [], soft: { lower: 1, upper: 1 }, bounds: BOTH },
  maker: { id: "maker", side: "at", lags: [], soft: { lower: 1, upper: 2 }, bounds: BOTH },
  hallmark: { id: "hallmark", side: "at", lags: [], soft: { lower: 1 / 12, upper: 1 / 12 }, bounds: BOTH },
  mark: {
    id: "mark",
    side: "before",
    lags: [{ share: 0.25, mean: 2 }],
    soft: { lower: 0.5, upper: 0.5 },
    bounds: BOTH,
  },
  label: {
    id: "label",
    side: "before",
    lags: [{ share: 0.4, mean: 2.5 }],
    soft: { lower: 0.5, upper: 0.5 },
    bounds: BOTH,
  },
  wording: {
    id: "wording",
    side: "before",
    lags: [{ share: 0.4, mean: 2.5 }],
    soft: { lower: 1, upper: 0.5 },
    bounds: BOTH,
  },
  address: {
    id: "address",
    side: "before",
    lags: [{ share: 0.5, mean: 3 }],
    soft: { lower: 0.5, upper: 0.5 },
    bounds: BOTH,
  },
  number: {
    id: "number",
    side: "before",
    lags: [
      { share: 0.5, mean: 3 },
      { share: 0.3, mean: 12 },
    ],
    soft: firm,
    bounds: BELOW,
  },
  material: {
    id: "material",
    side: "before",
    lags: [{ share: 0.7, mean: 4 }],
    soft: { lower: 3, upper: 5 },
    bounds: BOTH,
  },
  sold: {
    id: "sold",
    side: "after",
    lags: [
      { share: 0.7, mean: 1 },
      { share: 0.2, mean: 10 },
    ],
    soft: firm,
    bounds: ABOVE,
  },
  given: {
    id: "given",
    side: "after",
    lags: [
      { share: 0.7, mean: 2 },
      { share: 0.3, mean: 20 },
    ],
    soft: firm,
    bounds: ABOVE,
  },
  owned: {
    id: "owned",
    side: "after",
    lags: [
      { share: 0.4, mean: 5 },
      { share: 0.6, mean: 30 },
    ],
    soft: firm,
    bounds: { lower: false, upper: "start" },
  },
  photographed: {
    id: "photographed",
    side: "after",
    lags: [
      { share: 0.6, mean: 4 },
      { share: 0.4, mean: 20 },
    ],
    soft: firm,
    bounds: ABOVE,
  },
  repaired: {
    id: "repaired",
    side: "apart",
    lags: [],
    soft: firm,
    bounds: { lower: false, upper: null },
  },
} as const satisfies Record<string, EventModel>;
export type ModelId = keyof typeof MODELS;

/** What an event says where the kind of evidence says nothing more. */
const BY_EVENT: Readonly<Record<DatedEvent, ModelId>> = {
  made: "made",
  marked: "mark",
  labelled: "label",
  sold: "sold",
  given: "given",
  owned: "owned",
  photographed: "photographed",
  repaired: "repaired",
};

/** What a kind of evidence says more exactly of the making, marking or labelling. */
const BY_KIND: Readonly<Partial<Record<EvidenceKind, ModelId>>> = {
  wording: "wording",
  number: "number",
  hallmark: "hallmark",
  "catalogue-line": "line",
  material: "material",
  construction: "material",
  maker: "maker",
  address: "address",
};

/** The model of a piece of evidence: what came after the making goes by the event, what was done in it by its kind. */
export function modelOf({
  kind,
  event,
}: {
  readonly kind: EvidenceKind;
  readonly event: DatedEvent;
}): EventModel & { readonly id: ModelId } {
  const inTheMaking = event === "made" || event === "marked" || event === "labelled";
  return MODELS[(inTheMaking ? BY_KIND[kind] : undefined) ?? BY_EVENT[event]];
}
