import type { ListName } from "./object-file.ts";

/** How much a file holds at most. */
export const MOST: Readonly<Record<ListName | "scans" | "explanations", number>> = {
  photographs: 200,
  observations: 300,
  measurements: 100,
  marks: 30,
  events: 200,
  documents: 100,
  pieces: 60,
  conditions: 200,
  anomalies: 50,
  stances: 500,
  scans: 50,
  explanations: 12,
};

/** Signs that a text may have. 60,000 are some 10,000 words of English: a long interview. */
export const LONGEST = {
  line: 200,
  text: 4_000,
  transcription: 60_000,
} as const;
