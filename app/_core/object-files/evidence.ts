import { parseInterval } from "../dates/parse.ts";
import { pieceOfEntry } from "../dating/entry-statement.ts";
import { type Estimate, estimate } from "../dating/estimate.ts";
import type { DatedEvent, DatedStatement, Evidence, EvidenceKind } from "../dating/evidence.ts";
import { USUAL } from "../dating/usual-evidence.ts";
import { decodeWording } from "../decoding/label-wording.ts";
import { absentStatement, featureStatement, pointOf } from "./checklist.ts";
import type { ItemRef } from "./derived.ts";
import type { MatchedEntry } from "./matched-entry.ts";
import type { EvidencePiece, MarkFound, ObjectFile, Observation, ProvenanceEvent } from "./object-file.ts";

/** A dated statement, and what in the file makes it. */
export type FileEvidence = Evidence & { readonly item: ItemRef };

/** Everything in a file that says when the object was made. What was added later says nothing of that. */
export function evidenceOf(file: ObjectFile, entries: readonly MatchedEntry[]): readonly FileEvidence[] {
  return [
    ...ofLine(file),
    ...file.marks.flatMap((mark) => (mark.belongs === "added later" ? [] : ofMark(mark, entries))),
    ...file.observations.flatMap(ofObservation),
    ...file.events.flatMap((event) => ofEvent(event, file)),
    ...file.pieces.flatMap(ofPiece),
  ];
}

/** When the object was made, by everything in the file. */
export function estimateOf(file: ObjectFile, entries: readonly MatchedEntry[], thisYear: number): Estimate {
  return estimate(evidenceOf(file, entries), { kind: "widest", thisYear });
}

type Statement = Omit<DatedStatement, "basis"> & Pick<Evidence, "basis">;

function piece(
  item: ItemRef,
  part: string,
  { edtf, ...statement }: Statement,
  group: string | null = null,
  others: readonly string[] = [],
): readonly FileEvidence[] {
  const interval = parseInterval(edtf);
  if (!interval.ok) return [];
  const alternatives = others.flatMap((each) => {
    const other = parseInterval(each);
    return other.ok ? [other.value] : [];
  });
  const id = `${item.list}:${item.id}${part}`;
  return [{ id, ...statement, interval: interval.value, alternatives, group, item }];
}

/** What a worksheet said, with its source and how far it was trusted there. */
function ofPiece({ id, group, alternatives, ...said }: EvidencePiece): readonly FileEvidence[] {
  return piece({ list: "pieces", id }, "", said, group, alternatives);
}

function ofLine({ line }: ObjectFile): readonly FileEvidence[] {
  if (!line?.made) return [];
  const { event, reliability } = USUAL["catalogue-line"];
  const words = { reason: line.name, source: line.source, basis: null, exceptions: "" };
  const statement = { kind: "catalogue-line", event, edtf: line.made, reliability, ...words } as const;
  return piece({ list: "line", id: "line" }, "", statement);
}

/** What a mark's entry says of its use, and what its wording says; both are read off one thing and count once. */
function ofMark(mark: MarkFound, entries: readonly MatchedEntry[]): readonly FileEvidence[] {
  const item = { list: "marks", id: mark.id } as const;
  const entry = entries.find(({ slug }) => slug === mark.match?.entry);
  const period = entry?.period ? parseInterval(entry.period) : null;
  const words = { reason: entry?.title ?? "", source: entry ? `/entries/${entry.slug}` : "" };
  const of =
    entry && period?.ok
      ? pieceOfEntry({ ...entry, period: period.value }, words, mark.match?.probability ?? 1)
      : null;
  // A shop puts its label on what it sells: the making lies before, not with it.
  const event = entry?.makerPart === "retailed" ? "sold" : of?.event;
  const matched = of && event ? piece(item, "", { ...of, event }, mark.id) : [];
  return [...matched, ...ofWording(mark.words, item, mark.id, entry?.makerPart === "retailed")];
}

function ofWording(text: string, item: ItemRef, group: string, isShop = false): readonly FileEvidence[] {
  if (text.trim() === "") return [];
  const decoded = decodeWording({ text });
  if (!decoded.ok) return [];
  return decoded.value.statements.flatMap(({ rule, jurisdiction: _, what: __, found: ___, ...said }) =>
    piece(item, `:${rule}`, isShop ? { ...said, event: "sold" } : said, group),
  );
}

function ofObservation({ id, point, observed, option, value }: Observation): readonly FileEvidence[] {
  const item = { list: "observations", id } as const;
  const looked = point === null ? null : pointOf(point);
  if (!looked || observed === "not examined") return [];
  if (observed === "absent") {
    const said = absentStatement(looked);
    return said ? piece(item, "", said) : [];
  }
  const feature = looked.options.find((each) => each.id === option)?.feature ?? looked.feature;
  const said = feature === undefined ? null : featureStatement(feature);
  return [...(said ? piece(item, "", said) : []), ...(looked.wording ? ofWording(value, item, id) : [])];
}

const OF_EVENT: Readonly<
  Record<ProvenanceEvent["kind"], { readonly kind: EvidenceKind; readonly event: DatedEvent }>
> = {
  made: { kind: "story", event: "made" },
  sold: { kind: "story", event: "sold" },
  given: { kind: "story", event: "given" },
  inherited: { kind: "story", event: "owned" },
  moved: { kind: "story", event: "owned" },
  exhibited: { kind: "story", event: "owned" },
  photographed: { kind: "photograph", event: "photographed" },
  repaired: { kind: "repair", event: "repaired" },
};

/**
 * How often a step of a provenance is as it was told: with a document, without one, and by how much less where it is
 * only probable or possible. Chosen, not measured, and shown with the estimate.
 */
const TOLD = { documented: 0.9, told: USUAL.story.reliability, probably: 0.1, possibly: 0.25, least: 0.5 };

/** What one document says counts once, however many steps it tells of. */
function ofEvent(event: ProvenanceEvent, { documents }: ObjectFile): readonly FileEvidence[] {
  if (event.date === null) return [];
  const behind = documents.filter(({ id }) => event.documents.includes(id));
  const most = behind.length > 0 ? TOLD.documented : TOLD.told;
  const less = {
    certain: 0,
    "by tradition": TOLD.probably,
    probably: TOLD.probably,
    possibly: TOLD.possibly,
  };
  const reliability = Math.max(TOLD.least, most - less[event.qualifier]);
  const words = {
    reason: event.told,
    source: behind.map(({ title }) => title).join("; "),
  };
  const statement = { ...OF_EVENT[event.kind], ...words, edtf: event.date, reliability };
  const item = { list: "events", id: event.id } as const;
  return piece(item, "", { ...statement, basis: null, exceptions: "" }, behind[0]?.id ?? null);
}
