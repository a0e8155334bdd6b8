import type { DatedStatement } from "../dating/evidence.ts";
import { FEATURES } from "../decoding/making.ts";
import { RELIABILITY, type Strength } from "../decoding/reliability-policy.ts";
import ceramics from "./checklists/ceramics.json" with { type: "json" };
import clocks from "./checklists/clocks-and-instruments.json" with { type: "json" };
import furniture from "./checklists/furniture.json" with { type: "json" };
import glass from "./checklists/glass.json" with { type: "json" };
import silver from "./checklists/silver-and-base-metal.json" with { type: "json" };
import softToys from "./checklists/soft-toys.json" with { type: "json" };
import textiles from "./checklists/textiles-and-labels.json" with { type: "json" };
import tin from "./checklists/tin-and-wooden-toys.json" with { type: "json" };
import type { Family } from "./vocabulary.ts";

/** What a thing seen, or not found, tells besides a date; explanations of what does not fit are weighed by it. */
type Topic = "repair" | "replaced part" | "two bodies" | "recent making" | "even wear" | "variation";

/** A dated saying of a checklist's own, where no table has one. */
type Saying = {
  readonly kind: "material" | "construction";
  readonly edtf: string;
  readonly strength: Strength;
  readonly reason: string;
  readonly exceptions: string;
};

type Option = {
  readonly id: string;
  readonly says: string;
  /** Row of the tables of materials and construction that dates it. */
  readonly feature?: string;
};

/** One thing to look for. Its sentences stand in the checklist's file, as a table's do. */
export type ChecklistPoint = {
  readonly id: string;
  readonly lookFor: string;
  /** Why it matters for date or maker. */
  readonly why: string;
  readonly basis: "common-practice" | "from-memory" | "published";
  readonly source: string;
  readonly options: readonly Option[];
  /** Row of the tables that dates it once it is seen, where there is nothing to choose. */
  readonly feature?: string;
  /** What it says that it was looked for and is not there. */
  readonly absent?: Saying;
  /** The value is wording of a label, which the decoder of wording reads. */
  readonly wording?: boolean;
  readonly tells?: Topic;
};
export type Checklist = { readonly family: Family; readonly points: readonly ChecklistPoint[] };

const CHECKLISTS: Readonly<Record<Family, Checklist>> = {
  "soft toys": softToys as Checklist,
  "tin and wooden toys": tin as Checklist,
  ceramics: ceramics as Checklist,
  "silver and base metal": silver as Checklist,
  glass: glass as Checklist,
  "textiles and labels": textiles as Checklist,
  "clocks and instruments": clocks as Checklist,
  furniture: furniture as Checklist,
};

export const checklistOf = (family: Family): Checklist => CHECKLISTS[family];

/** A point of any family, since a file's family may be mended after it was noted. */
export function pointOf(id: string): ChecklistPoint | null {
  return (
    Object.values(CHECKLISTS)
      .flatMap(({ points }) => points)
      .find((each) => each.id === id) ?? null
  );
}

/** What the table says of an option or a point that was seen. */
export function featureStatement(id: string): DatedStatement | null {
  const row = FEATURES.find((each) => each.id === id);
  if (!row) return null;
  const { kind, edtf, strength, feature, reason, source, basis, exceptions = "" } = row;
  const reliability = RELIABILITY[basis][strength];
  return {
    kind,
    event: "made",
    edtf,
    reliability,
    reason: `${feature}: ${reason}`,
    source,
    basis,
    exceptions,
  };
}

/** What it says that a point was looked for and is not there. */
export function absentStatement(point: ChecklistPoint): DatedStatement | null {
  if (!point.absent) return null;
  const { kind, edtf, strength, reason, exceptions } = point.absent;
  const reliability = RELIABILITY[point.basis][strength];
  return {
    kind,
    event: "made",
    edtf,
    reliability,
    reason,
    source: point.source,
    basis: point.basis,
    exceptions,
  };
}
