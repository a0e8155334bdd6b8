import { estimateOf, evidenceOf } from "../evidence.ts";
import type {
  ConditionNote,
  FileDocument,
  FileMeasurement,
  MarkFound,
  ProvenanceEvent,
} from "../object-file.ts";
import type { ReportSource } from "./parts.ts";

/** What it is made of: nothing that has to be compared first. */
export type LinkedArtSource = Pick<ReportSource, "kept" | "entries" | "thisYear" | "host">;
/** A value of JSON-LD. */
type Node = { readonly [property: string]: unknown };

const AAT = "http://vocab.getty.edu/aat/";
const concept = (id: string, label: string): Node => ({ id: `${AAT}${id}`, type: "Type", _label: label });
const NAME = concept("300404670", "Preferred Term");
const BRIEF = concept("300418049", "Brief Text");
const DESCRIPTION = concept("300435416", "Description");
const MARKINGS = concept("300435420", "Markings Statement");
const PROVENANCE = concept("300435438", "Provenance Statement");
const TRANSCRIPTION = concept("300404333", "Transcription");
const CONDITION = concept("300435425", "Condition Statement");
const DIMENSIONS: Readonly<Record<string, Node>> = {
  height: concept("300055644", "Height"),
  length: concept("300055645", "Length"),
  width: concept("300055647", "Width"),
  depth: concept("300072633", "Depth"),
  diameter: concept("300055624", "Diameter"),
  weight: concept("300056240", "Weight"),
};
const MILLIMETRES = { id: `${AAT}300379097`, type: "MeasurementUnit", _label: "millimeters" };
const GRAMS = { id: `${AAT}300379225`, type: "MeasurementUnit", _label: "grams" };

/**
 * The file in Linked Art 1.0. What a finding says is an assignment that somebody made, never a property of the object.
 * @param base where the file is read
 */
export function linkedArtOf(source: LinkedArtSource, base: string): Node {
  const { kept, host } = source;
  const file = kept.content;
  return {
    "@context": "https://linked.art/ns/v1/linked-art.json",
    id: base,
    type: "HumanMadeObject",
    _label: file.title,
    identified_by: [{ type: "Name", content: file.title, classified_as: [NAME] }],
    ...list("referred_to_by", [
      ...(file.description === "" ? [] : [statement(file.description, DESCRIPTION)]),
      ...file.marks.map((mark) => statement(wordsOfMark(mark), MARKINGS)),
      ...file.events.map((event) => statement(wordsOfEvent(event), PROVENANCE)),
      ...file.conditions.map((note) => statement(wordsOfCondition(note), CONDITION)),
    ]),
    ...list(
      "subject_of",
      file.documents.map((document) => documentAbout(document, base, host)),
    ),
    ...list("dimension", file.measurements.map(dimension)),
    ...list(
      "shows",
      file.marks.flatMap((mark) => shownMark(mark, host)),
    ),
    ...production(source),
    ...list(
      "representation",
      file.photographs.map(({ sha256, shows }) => photograph(sha256, shows, base, host)),
    ),
  };
}

const list = (property: string, nodes: readonly Node[]): Node =>
  nodes.length === 0 ? {} : { [property]: nodes };

/** Everything that is said in a sentence has to be marked as one. */
function statement(content: string, kind: Node): Node {
  return { type: "LinguisticObject", content, classified_as: [{ ...kind, classified_as: [BRIEF] }] };
}

function dimension({ measured, part, amount, within, typed }: FileMeasurement): Node {
  const kind = DIMENSIONS[measured.split("-")[0] ?? ""];
  const label = part === "" ? measured : `${measured}, ${part}`;
  return {
    type: "Dimension",
    _label: label,
    ...(kind ? { classified_as: [kind] } : {}),
    value: amount,
    lower_value_limit: amount - within,
    upper_value_limit: amount + within,
    unit: measured === "weight" ? GRAMS : MILLIMETRES,
    ...(typed === "" ? {} : { identified_by: [{ type: "Name", content: typed }] }),
  };
}

/** The mark as designed, by the entry that it was matched with. */
function shownMark({ match }: MarkFound, host: string): readonly Node[] {
  if (!match) return [];
  const id = `${host}/entries/${match.entry}/revisions/${match.revision.number}`;
  return [{ id, type: "VisualItem", _label: match.title }];
}

const wordsOfMark = ({ kind, technique, place, words, description, match }: MarkFound) =>
  [kind, technique, place, words, description, match?.title].filter((part) => part).join(", ");

const wordsOfEvent = ({
  kind,
  qualifier,
  passage,
  from,
  to,
  place,
  date,
  dateTyped,
  told,
}: ProvenanceEvent) =>
  [
    kind,
    qualifier === "certain" ? "" : qualifier,
    from,
    passage === "not known" ? to : `${passage} ${to}`,
    place,
    date ?? dateTyped,
    told,
  ]
    .filter((part) => part !== "")
    .join(", ");

const wordsOfCondition = ({ condition, extent, place, note }: ConditionNote) =>
  [condition, extent, place, note].filter((part) => part !== "").join(", ");

/** A document that tells of the object: its words, and its scans where they are read. */
function documentAbout(document: FileDocument, base: string, host: string): Node {
  const { title, kind, transcription, vouchedBy, scans, date, dateTyped } = document;
  const about = [kind, date ?? dateTyped, vouchedBy === "" ? "" : `vouched for by ${vouchedBy}`];
  return {
    type: "LinguisticObject",
    _label: title,
    identified_by: [{ type: "Name", content: title }],
    referred_to_by: [
      statement(about.filter((part) => part !== "").join(", "), DESCRIPTION),
      ...(transcription === "" ? [] : [statement(transcription, TRANSCRIPTION)]),
    ],
    ...list(
      "digitally_carried_by",
      scans.map(({ sha256, type, name }) => ({
        ...{ type: "DigitalObject", _label: name, format: type },
        access_point: [imageAt(sha256, base, host)],
      })),
    ),
  };
}

/** Its making: by whom somebody found it to be, and when by the evidence; nothing where neither is said. */
function production(source: LinkedArtSource): Node {
  const made = { ...madeWhen(source), ...list("attributed_by", attributions(source)) };
  return Object.keys(made).length === 0 ? {} : { produced_by: { type: "Production", ...made } };
}

/** From the first to the last year of those that hold 95 in 100. */
function madeWhen({ kept, entries, thisYear }: LinkedArtSource): Node {
  if (evidenceOf(kept.content, entries).length === 0) return {};
  const { ranges } = estimateOf(kept.content, entries, thisYear).shortest[95];
  const first = Math.min(...ranges.map(({ from }) => from));
  const last = Math.max(...ranges.map(({ to }) => to));
  return { timespan: timeSpan(first, last) };
}

function timeSpan(first: number, last: number): Node {
  return {
    type: "TimeSpan",
    identified_by: [{ type: "Name", content: `${yearOf(first)}/${yearOf(last)}` }],
    begin_of_the_begin: `${yearOf(first)}-01-01T00:00:00Z`,
    end_of_the_end: `${yearOf(last)}-12-31T23:59:59Z`,
  };
}

const yearOf = (year: number) => `${year < 0 ? "-" : ""}${String(Math.abs(year)).padStart(4, "0")}`;

/** Who made it, as somebody found on a day: with the rung of the ladder, and the revisions that it stands on. */
function attributions({ kept, host }: LinkedArtSource): readonly Node[] {
  const { finding } = kept.content;
  if (!finding || finding.maker === "") return [];
  const maker = {
    ...(finding.makerSlug === null ? {} : { id: `${host}/makers/${finding.makerSlug}` }),
    ...{ type: "Group", _label: finding.maker },
  };
  const says = `${finding.rung} ${finding.maker}`;
  const revisions = finding.revisions.map(({ entry, revision }) => ({
    id: `${host}/entries/${entry}/revisions/${revision.number}`,
    type: "LinguisticObject",
    _label: `SHA-256 ${revision.contentHash}`,
  }));
  return [
    {
      type: "AttributeAssignment",
      _label: says,
      identified_by: [{ type: "Name", content: finding.rung }],
      assigned: [maker],
      assigned_property: "carried_out_by",
      carried_out_by: [{ id: `${host}/members/${finding.by.id}`, type: "Person", _label: finding.by.name }],
      timespan: {
        type: "TimeSpan",
        begin_of_the_begin: finding.at,
        end_of_the_end: finding.at,
      },
      ...list("referred_to_by", [
        ...(finding.says === "" ? [] : [statement(finding.says, DESCRIPTION)]),
        ...(finding.doubts === "" ? [] : [statement(finding.doubts, DESCRIPTION)]),
        ...revisions,
      ]),
    },
  ];
}

/** Under a shared link the images are read there too. */
function imageAt(sha256: string, base: string, host: string): Node {
  const images = base.includes("/shared/") ? `${base}/images` : `${host}/images`;
  return { id: `${images}/${sha256}`, type: "DigitalObject" };
}

function photograph(sha256: string, shows: string, base: string, host: string): Node {
  return {
    type: "VisualItem",
    ...(shows === "" ? {} : { _label: shows }),
    digitally_shown_by: [
      {
        type: "DigitalObject",
        access_point: [imageAt(sha256, base, host)],
      },
    ],
  };
}
