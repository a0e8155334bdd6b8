import { hardBounds } from "../dating/bounds.ts";
import { findConflicts } from "../dating/conflicts.ts";
import type { EvidenceKind } from "../dating/evidence.ts";
import { explain, type Scene } from "./arguments.ts";
import { type AnomalyKind, type FoundAnomaly, type ItemRef, type Said, saying } from "./derived.ts";
import { evidenceOf, type FileEvidence } from "./evidence.ts";
import { doubledMarks, outOfPlace, reproductionsNear, twoMakers } from "./mark-anomalies.ts";
import type { MatchedEntry } from "./matched-entry.ts";
import type { MarkFound, ObjectFile } from "./object-file.ts";
import { sizesOf } from "./sizes.ts";

/**
 * What in a file does not fit together. Each anomaly carries all its explanations, with what the file holds for and
 * against them; which of them it is, is for the examiner to say.
 */
export function anomaliesOf(file: ObjectFile, entries: readonly MatchedEntry[]): readonly FoundAnomaly[] {
  const evidence = evidenceOf(file, entries);
  const near = reproductionsNear(file, entries);
  const scene: Scene = {
    ...{ file, entries, evidence, sizes: sizesOf(file) },
    conflicts: findConflicts(evidence),
    isReproductionNear: near.length > 0,
  };
  const found: readonly Said<AnomalyKind>[] = [
    ...doubledMarks(file, entries),
    ...twoMakers(file, entries),
    ...file.marks.flatMap((mark) => tooYoung(mark, scene)),
    ...sizeNotCatalogued(scene),
    ...outOfPlace(file, entries),
    ...near,
    ...storiesAgainstDate(scene),
  ];
  return found.map((said) => ({
    ...said,
    params: saying(said.params),
    key: `${said.is}:${said.items
      .map(({ id }) => id)
      .toSorted()
      .join("+")}`,
    explanations: explain(said.is, scene, said.items),
  }));
}

/** Kinds of a worksheet's pieces that date the object itself; the others may be about the very mark, or be told. */
const OF_BODY: readonly EvidenceKind[] = ["material", "construction", "catalogue-line"];

/**
 * A mark that was not in use before the last day on which what the object is made of, and its line, allow it to have
 * been made; for a label other marks count too. What was told of it does not: a story is judged by itself.
 */
function tooYoung(mark: MarkFound, { file, entries, evidence }: Scene): readonly Said<AnomalyKind>[] {
  const isLabel = mark.kind === "label";
  const labels = file.marks.filter(({ kind }) => kind === "label").map(({ id }) => id);
  const body = evidence.filter(({ item, kind }) => {
    if (item.list === "marks") return isLabel && !labels.includes(item.id);
    return item.list === "pieces" ? OF_BODY.includes(kind) : item.list !== "events";
  });
  const { notAfter } = hardBounds(body);
  const alone = { ...file, line: null, observations: [], events: [] };
  const own = evidenceOf({ ...alone, marks: [{ ...mark, belongs: "from the first" }] }, entries);
  const from = own
    .flatMap(({ interval }) => interval.firstDay ?? [])
    .toSorted()
    .at(-1);
  if (notAfter === null || from === undefined || from <= notAfter.day) return [];
  const behind = body.filter(({ id }) => notAfter.evidenceIds.includes(id)).map(({ item }) => item);
  const params = { place: mark.place, from, notAfter: notAfter.day };
  return [
    { is: isLabel ? "label-too-young" : "mark-too-young", params, items: [markRef(mark), ...unique(behind)] },
  ];
}

const markRef = ({ id }: MarkFound): ItemRef => ({ list: "marks", id });

function unique(items: readonly ItemRef[]): readonly ItemRef[] {
  return items.filter((item, i) => items.findIndex(({ id }) => id === item.id) === i);
}

/** However the catalogue may have measured, no size of the line is likelier than one that nobody catalogued. */
function sizeNotCatalogued({ file, sizes }: Scene): readonly Said<AnomalyKind>[] {
  if (!sizes || sizes.under.length === 0 || sizes.under.some(({ best }) => best !== null)) return [];
  const taken = file.measurements.filter(
    ({ measured, part, base }) =>
      part === "" && base !== "with base" && sizes.under.some(({ convention }) => convention === measured),
  );
  const list = file.line?.sizes.map(({ name }) => name).join(", ") ?? "";
  const params = {
    measured: taken.map(({ typed, amount }) => typed || `${amount} mm`).join(", "),
    sizes: list,
  };
  const items = taken.map(({ id }): ItemRef => ({ list: "measurements", id }));
  return [{ is: "size-not-catalogued", params, items }];
}

/** A step told that cannot be true together with what the object shows, or with another step. */
function storiesAgainstDate({ file, evidence, conflicts }: Scene): readonly Said<AnomalyKind>[] {
  const byId = new Map(evidence.map((piece) => [piece.id, piece]));
  return file.events.flatMap((event) => {
    const own = `events:${event.id}`;
    const others = conflicts
      .filter((set) => set.includes(own))
      .flat()
      .flatMap((id): readonly FileEvidence[] => {
        const piece = byId.get(id);
        return piece && id !== own ? [piece] : [];
      });
    if (others.length === 0) return [];
    const params = {
      kind: event.kind,
      who: event.to || event.from,
      date: event.date ?? "",
      against: [...new Set(others.map(({ reason }) => reason.replace(/\.$/, "")))].join("; "),
    };
    const items: readonly ItemRef[] = [
      { list: "events", id: event.id },
      ...unique(others.map(({ item }) => item)),
    ];
    return [{ is: "story-against-date" as const, params, items }];
  });
}
