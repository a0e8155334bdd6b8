import { parseInterval } from "../dates/parse.ts";
import type { SizeEstimate } from "../sizes/estimate-size.ts";
import table from "./anomaly-explanations.json" with { type: "json" };
import { pointOf } from "./checklist.ts";
import type { AnomalyKind, Explanation, ItemRef, Said } from "./derived.ts";
import type { FileEvidence } from "./evidence.ts";
import type { MatchedEntry } from "./matched-entry.ts";
import type { MarkFound, ObjectFile } from "./object-file.ts";

/** What explanations are weighed by: the whole file, and the marks and steps that do not fit. */
export type Scene = {
  readonly file: ObjectFile;
  readonly entries: readonly MatchedEntry[];
  readonly evidence: readonly FileEvidence[];
  readonly conflicts: readonly (readonly string[])[];
  readonly sizes: SizeEstimate | null;
  readonly isReproductionNear: boolean;
};

type Row = { readonly id: string; readonly for: readonly string[]; readonly against: readonly string[] };
const EXPLANATIONS: Readonly<Record<AnomalyKind, readonly Row[]>> = table;

/** Explanations of an anomaly, in the order of the table: each with what the file holds for and against it. */
export function explain(is: AnomalyKind, scene: Scene, items: readonly ItemRef[]): readonly Explanation[] {
  const argue = (rules: readonly string[]) => rules.flatMap((rule) => argument(rule, scene, items) ?? []);
  return EXPLANATIONS[is].map((row) => ({
    id: row.id,
    for: argue(row.for),
    against: argue(row.against),
  }));
}

function argument(rule: string, scene: Scene, items: readonly ItemRef[]): Said | null {
  const [is = "", topic] = rule.split(":");
  if (topic !== undefined) return ofTopic(is, topic, scene);
  const found = FACTS[is]?.(scene, marksOf(scene, items), items) ?? null;
  return found === null ? null : { is, params: {}, items: found };
}

/** What was looked for with a topic in mind, seen or absent. */
function ofTopic(is: string, topic: string, { file }: Scene): Said | null {
  const observed = is === "topic-seen" ? "seen" : "absent";
  const noted = file.observations.filter(
    (each) => each.observed === observed && each.point !== null && pointOf(each.point)?.tells === topic,
  );
  if (noted.length === 0) return null;
  return { is: `${observed}-${topic.replace(" ", "-")}`, params: {}, items: refs("observations", noted) };
}

const refs = (list: ItemRef["list"], items: readonly { readonly id: string }[]): readonly ItemRef[] =>
  items.map(({ id }) => ({ list, id }));

/** The marks an anomaly is about, or all of them where it is about none. */
function marksOf({ file }: Scene, items: readonly ItemRef[]): readonly MarkFound[] {
  const about = file.marks.filter(({ id }) => items.some((item) => item.list === "marks" && item.id === id));
  return about.length > 0 ? about : file.marks.filter(({ match }) => match !== null);
}

type Fact = (
  scene: Scene,
  marks: readonly MarkFound[],
  items: readonly ItemRef[],
) => readonly ItemRef[] | null;

const some = (list: ItemRef["list"], found: readonly { readonly id: string }[]) =>
  found.length > 0 ? refs(list, found) : null;
const when = (holds: boolean, items: readonly ItemRef[] = []) => (holds ? items : null);
const entryOf = ({ entries }: Scene, { match }: MarkFound) =>
  entries.find(({ slug }) => slug === match?.entry);
const distinct = (values: readonly unknown[]) => new Set(values).size;
/** From so much on a match counts as sure, below so much as unsure; in between it speaks for neither. */
const SURE = { least: 0.9, unsure: 0.7 } as const;

function sizeStands({ file, sizes }: Scene): "between" | "beyond" | null {
  const all = file.line?.sizes.map(({ millimetres }) => millimetres) ?? [];
  if (!sizes || sizes.under.length === 0 || sizes.under.some(({ best }) => best !== null)) return null;
  const taken = file.measurements.filter(({ measured }) =>
    sizes.under.some((u) => u.convention === measured),
  );
  const inside = taken.some(({ amount }) => amount > Math.min(...all) && amount < Math.max(...all));
  return inside ? "between" : "beyond";
}

/** Steps that an anomaly is about, or all. */
function stepsOf({ file }: Scene, items: readonly ItemRef[]) {
  const about = file.events.filter(({ id }) =>
    items.some((item) => item.list === "events" && item.id === id),
  );
  return about.length > 0 ? about : file.events;
}

const yearsOf = (edtf: string | null) => {
  const read = edtf === null ? null : parseInterval(edtf);
  return read?.ok ? read.value : null;
};

function documentedWithin(scene: Scene, items: readonly ItemRef[], isThen: boolean) {
  return stepsOf(scene, items).filter((step) =>
    scene.file.documents.some((document) => {
      const [told, written] = [yearsOf(step.date)?.latest, yearsOf(document.date)?.earliest];
      if (!step.documents.includes(document.id) || told == null || written == null) return false;
      return isThen ? written - told <= 2 : written - told >= 20;
    }),
  );
}

const FACTS: Readonly<Record<string, Fact>> = {
  "same-entry": (_, marks) =>
    when(marks.length > 1 && distinct(marks.map(({ match }) => match?.entry)) === 1, refs("marks", marks)),
  "techniques-differ": (_, marks) => when(distinct(techniques(marks)) > 1, refs("marks", marks)),
  "techniques-same": (_, marks) =>
    when(techniques(marks).length > 1 && distinct(techniques(marks)) === 1, refs("marks", marks)),
  "entry-says-one": (scene, marks) =>
    some(
      "marks",
      marks.filter((mark) => entryOf(scene, mark)?.marksPerObject === 1),
    ),
  "mark-added": (_, marks) =>
    some(
      "marks",
      marks.filter(({ belongs }) => belongs === "added later"),
    ),
  "match-sure": (_, marks) =>
    some(
      "marks",
      marks.filter(({ match }) => (match?.probability ?? 0) >= SURE.least),
    ),
  "match-unsure": (_, marks) =>
    some(
      "marks",
      marks.filter(({ match }) => match?.probability != null && match.probability < SURE.unsure),
    ),
  "entry-unverified": (scene, marks) =>
    some(
      "marks",
      marks.filter((mark) => {
        const entry = entryOf(scene, mark);
        return entry !== undefined && entry.state !== "verified";
      }),
    ),
  "has-retailer": (scene) =>
    some(
      "marks",
      scene.file.marks.filter((mark) => entryOf(scene, mark)?.makerPart === "retailed"),
    ),
  "repair-told": ({ file }) =>
    some(
      "events",
      file.events.filter(({ kind }) => kind === "repaired"),
    ),
  "repair-noted": ({ file }) =>
    some(
      "conditions",
      file.conditions.filter(({ condition }) => REPAIRS.some((each) => each === condition)),
    ),
  "size-between": (scene) =>
    when(sizeStands(scene) === "between", refs("measurements", scene.file.measurements)),
  "size-beyond": (scene) =>
    when(sizeStands(scene) === "beyond", refs("measurements", scene.file.measurements)),
  "convention-not-known": ({ file }) => when(file.line?.convention === null, [{ list: "line", id: "line" }]),
  "measured-on-screen": ({ file }) =>
    some(
      "measurements",
      file.measurements.filter(({ onScreen }) => onScreen !== null),
    ),
  doubled: ({ file }) => {
    const slugs = file.marks.flatMap(({ match }) => (match ? [match.entry] : []));
    const twice = file.marks.filter(({ match }) => slugs.filter((slug) => slug === match?.entry).length > 1);
    return some("marks", twice);
  },
  "reproduction-near": ({ isReproductionNear }) => when(isReproductionNear),
  "dates-clash": ({ conflicts }) => when(conflicts.length > 0),
  "table-from-memory": ({ evidence }) => {
    const weak = evidence.filter(({ basis }) => basis !== null && basis !== "published");
    return weak.length > 0 ? weak.map(({ item }) => item) : null;
  },
  documented: ({ file }) =>
    some(
      "events",
      file.events.filter(({ documents }) => documents.length > 0),
    ),
  undocumented: (scene, _, items) =>
    some(
      "events",
      stepsOf(scene, items).filter(({ documents }) => documents.length === 0),
    ),
  qualified: (scene, _, items) =>
    some(
      "events",
      stepsOf(scene, items).filter(({ qualifier }) => qualifier !== "certain"),
    ),
  "told-later": (scene, _, items) => some("events", documentedWithin(scene, items, false)),
  "documented-then": (scene, _, items) => some("events", documentedWithin(scene, items, true)),
  "gift-before-label": ({ file, evidence }, marks) => {
    const labels = evidence.filter(({ item }) => marks.some(({ id }) => id === item.id));
    const first = labels.flatMap(({ interval }) => interval.firstDay ?? []).toSorted()[0];
    const had = file.events.filter(({ date }) => {
      const last = yearsOf(date)?.lastDay;
      return first !== undefined && last != null && last < first;
    });
    return some("events", had);
  },
};

const REPAIRS = ["replaced part", "repaired", "restored surface"] as const;
const techniques = (marks: readonly MarkFound[]) => marks.flatMap(({ technique }) => technique ?? []);

/** Rules of the table that nothing answers; a test holds it empty. */
export function unansweredRules(): readonly string[] {
  return Object.values(EXPLANATIONS)
    .flat()
    .flatMap((row) => [...row.for, ...row.against])
    .filter((rule) => !rule.startsWith("topic-") && FACTS[rule] === undefined);
}
