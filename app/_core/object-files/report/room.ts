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
  {
    ...{ marks: 6, anomalies: 5, explanations: 6, pieces: 12, events: 16, remarks: 6, documents: 10 },
    ...{ measurements: 12, observations: 16, conditions: 10, citations: 10, texts: 0.6 },
  },
  {
    ...{ marks: 4, anomalies: 4, explanations: 5, pieces: 10, events: 12, remarks: 5, documents: 8 },
    ...{ measurements: 10, observations: 10, conditions: 8, citations: 8, texts: 0.3 },
  },
  {
    ...{ marks: 3, anomalies: 3, explanations: 4, pieces: 8, events: 10, remarks: 4, documents: 6 },
    ...{ measurements: 8, observations: 8, conditions: 6, citations: 6, texts: 0.15 },
  },
];

/** Pages that a report has at most. */
export const MOST_PAGES = 8;
