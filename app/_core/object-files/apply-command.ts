import type { FileCommand } from "./commands.ts";
import type { EvidencePiece, FileDocument, Finding, ListName, MarkFound, ObjectFile } from "./object-file.ts";
import { isSameStatement, withWholeTexts } from "./same-statement.ts";
import { sameValue } from "./same-value.ts";
import { isSameObservation, isSameStance } from "./touched.ts";

type Item = { readonly id: string };

/** Makes a change that was found to be in order. */
export function applyCommand(file: ObjectFile, command: FileCommand): ObjectFile {
  switch (command.is) {
    case "describe": {
      const { title, family, description } = command;
      return { ...file, title, family, description };
    }
    case "line":
      return { ...file, line: command.line };
    case "photograph":
      return { ...file, photographs: put(file.photographs, command.item) };
    case "observation":
      return { ...file, observations: put(file.observations, command.item, isSameObservation) };
    case "measurement":
      return { ...file, measurements: put(file.measurements, command.item) };
    case "mark":
      return { ...file, marks: putMark(file.marks, command.item) };
    case "match":
      return {
        ...file,
        marks: file.marks.map((each) =>
          each.id === command.mark ? { ...each, match: command.match } : each,
        ),
      };
    case "event":
      return { ...file, events: put(file.events, command.item) };
    case "order":
      return { ...file, events: moveBefore(file.events, command.event, command.before) };
    case "document":
      return { ...file, documents: putDocument(file.documents, command.item) };
    case "scan":
      return {
        ...file,
        documents: file.documents.map((each) =>
          each.id === command.document ? { ...each, scans: put(each.scans, command.scan) } : each,
        ),
      };
    case "pieces":
      return { ...file, pieces: command.items.reduce(putPiece, file.pieces) };
    case "condition":
      return { ...file, conditions: put(file.conditions, command.item) };
    case "anomaly":
      return { ...file, anomalies: put(file.anomalies, command.item) };
    case "stance":
      return { ...file, stances: put(file.stances, command.item, isSameStance) };
    case "finding":
      return { ...file, finding: stateFinding(file, command.finding) };
    case "remove":
      return command.list === "scans"
        ? { ...file, documents: withoutScan(file.documents, command.document, command.id) }
        : withoutItem(file, command.list, command.id);
  }
}

/** In place of the item that it is the newer form of, keeping that one's id, or at the end. */
function put<T extends Item>(
  list: readonly T[],
  item: T,
  isSame: (a: T, b: T) => boolean = (a, b) => a.id === b.id,
): readonly T[] {
  const old = list.find((each) => isSame(each, item));
  return old ? list.map((each) => (each === old ? { ...item, id: old.id } : each)) : [...list, item];
}

function putPiece(pieces: readonly EvidencePiece[], item: EvidencePiece): readonly EvidencePiece[] {
  const old = pieces.find((each) => isSameStatement(each, item));
  return put(pieces, old ? withWholeTexts(item, old) : item, isSameStatement);
}

function putMark(marks: readonly MarkFound[], item: Omit<MarkFound, "match">): readonly MarkFound[] {
  return put(marks, { ...item, match: marks.find(({ id }) => id === item.id)?.match ?? null });
}

function putDocument(
  documents: readonly FileDocument[],
  item: Omit<FileDocument, "scans">,
): readonly FileDocument[] {
  return put(documents, { ...item, scans: documents.find(({ id }) => id === item.id)?.scans ?? [] });
}

function moveBefore<T extends Item>(list: readonly T[], id: string, before: string | null): readonly T[] {
  const moved = list.find((each) => each.id === id);
  if (!moved || id === before) return list;
  const rest = list.filter((each) => each !== moved);
  const place = before === null ? rest.length : rest.findIndex((each) => each.id === before);
  return [...rest.slice(0, place), moved, ...rest.slice(place)];
}

/** A finding stands on the revisions pinned when it is stated; the same again is not a new one. */
function stateFinding(file: ObjectFile, finding: Omit<Finding, "revisions"> | null): Finding | null {
  if (finding === null) return null;
  const revisions = file.marks.flatMap(({ match }) =>
    match ? [{ entry: match.entry, revision: match.revision }] : [],
  );
  const stated = { ...finding, revisions };
  const again = file.finding && { ...file.finding, at: stated.at };
  return again && sameValue(again, stated) ? file.finding : stated;
}

function withoutScan(documents: readonly FileDocument[], document: string, id: string) {
  return documents.map((each) =>
    each.id === document ? { ...each, scans: each.scans.filter((scan) => scan.id !== id) } : each,
  );
}

/** What hung on the item goes on without it: its photographs show the whole, events lose the document. */
function withoutItem(file: ObjectFile, list: ListName, id: string): ObjectFile {
  const less = { ...file, [list]: file[list].filter((each) => each.id !== id) };
  return {
    ...less,
    photographs: less.photographs.map((each) =>
      each.item === id ? { ...each, of: "whole", item: null } : each,
    ),
    events: less.events.map((each) =>
      each.documents.includes(id)
        ? { ...each, documents: each.documents.filter((document) => document !== id) }
        : each,
    ),
  };
}
