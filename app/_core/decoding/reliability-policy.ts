import type { Basis } from "../dating/evidence.ts";

/** How firmly a table's row ties its date to what is seen: by a law, by habit, by hearsay. */
export type Strength = "hard" | "soft" | "weak";

/**
 * How often a statement of a table is taken to be true of the object it is read on. Chosen, not measured: a law that was
 * read in print can still be misread or forged (1 in 50); one remembered is wrong more often, in its day or altogether
 * (1 in 10); what the trade says without a source is right three times in four.
 */
export const RELIABILITY: Readonly<Record<Basis, Readonly<Record<Strength, number>>>> = {
  published: { hard: 0.98, soft: 0.9, weak: 0.7 },
  "from-memory": { hard: 0.9, soft: 0.8, weak: 0.6 },
  "common-practice": { hard: 0.85, soft: 0.75, weak: 0.6 },
};
