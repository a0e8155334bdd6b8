/** How much of each thing a report says; the file has the rest. */
export type Room = {
  readonly marks: number;
  readonly anomalies: number;
  readonly explanations: number;
  readonly pieces: number;
  readonly events: number;
  readonly remarks: number;
  readonly documents: number;
  readonly measurements: number;
  readonly observations: number;
  readonly conditions: number;
  readonly citations: number;
  /** How much of a long text stands, as a part of what there is room for in the widest. */
  readonly texts: number;
};

const WIDEST: Room = {
  ...{ marks: 8, anomalies: 6, explanations: 8, pieces: 16, events: 20, remarks: 8, documents: 12 },
  ...{ measurements: 16, observations: 24, conditions: 12, citations: 12, texts: 1 },
};

/** From the widest on: a report that would be longer than it may be is made again in the next. */
export const ROOMS: readonly [Room, ...Room[]] = [
  WIDEST,
  { ...WIDEST, texts: 0.7, observations: 16 },
  { ...WIDEST, texts: 0.5, observations: 12, explanations: 5, pieces: 12 },
  {
    ...{ marks: 5, anomalies: 5, explanations: 6, pieces: 12, events: 14, remarks: 6, documents: 8 },
    ...{ measurements: 10, observations: 14, conditions: 8, citations: 8, texts: 0.5 },
  },
  {
    ...{ marks: 3, anomalies: 3, explanations: 4, pieces: 8, events: 8, remarks: 3, documents: 5 },
    ...{ measurements: 6, observations: 8, conditions: 5, citations: 5, texts: 0.25 },
  },
  {
    ...{ marks: 2, anomalies: 2, explanations: 3, pieces: 5, events: 5, remarks: 3, documents: 3 },
    ...{ measurements: 3, observations: 3, conditions: 3, citations: 4, texts: 0.1 },
  },
];

/** Pages that a report has at most. */
export const MOST_PAGES = 8;
