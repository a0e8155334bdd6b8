import { type FieldError, received } from "../field-error.ts";
import { checklistOf } from "./checklist.ts";
import type { FileCommand } from "./commands.ts";
import { MOST } from "./limits.ts";
import type { EvidencePiece, ListName, ObjectFile } from "./object-file.ts";
import { loopOf } from "./owner-loops.ts";
import { isSameStatement } from "./same-statement.ts";
import { partTouched } from "./touched.ts";

/** What a change asks of the rest of the file. */
export function checkCommand(file: ObjectFile, command: FileCommand): readonly FieldError[] {
  return [...checkRoom(file, command), ...checkWhatItNames(file, command)];
}

const LIST_OF: Readonly<Partial<Record<FileCommand["is"], ListName>>> = {
  photograph: "photographs",
  observation: "observations",
  measurement: "measurements",
  mark: "marks",
  event: "events",
  document: "documents",
  condition: "conditions",
  anomaly: "anomalies",
  stance: "stances",
};

/** Refuses one more item than the file holds at most. */
function checkRoom(file: ObjectFile, command: FileCommand): readonly FieldError[] {
  if (command.is === "pieces") {
    const isThere = (item: EvidencePiece) => file.pieces.some((each) => isSameStatement(each, item));
    const fresh = command.items.filter((item) => !isThere(item)).length;
    return fresh === 0 ? [] : full("pieces", file.pieces.length + fresh - 1, MOST.pieces);
  }
  if (partTouched(file, command) !== null) return [];
  const list = LIST_OF[command.is];
  if (list) return full(list, file[list].length, MOST[list]);
  if (command.is !== "scan") return [];
  const scans = file.documents.find(({ id }) => id === command.document)?.scans.length ?? 0;
  return full("scans", scans, MOST.scans);
}

function full(list: ListName | "scans", held: number, most: number): readonly FieldError[] {
  if (held < most) return [];
  return [{ field: list, rule: "list-full", received: received(String(held + 1)), params: { most } }];
}

function checkWhatItNames(file: ObjectFile, command: FileCommand): readonly FieldError[] {
  switch (command.is) {
    case "photograph":
      return checkSubject(file, command.item);
    case "observation":
      return checkPoint(file, command.item);
    case "measurement":
      return command.item.onScreen
        ? known("photograph", file.photographs, command.item.onScreen.photograph)
        : [];
    case "match":
      return known("mark", file.marks, command.mark);
    case "scan":
      return known("document", file.documents, command.document);
    case "event":
      return [
        ...command.item.documents.flatMap((id) => known("documents", file.documents, id)),
        ...checkOwners(file, command.item),
      ];
    case "order":
      return [
        ...known("event", file.events, command.event),
        ...(command.before === null ? [] : known("before", file.events, command.before)),
      ];
    case "finding":
      return checkSize(file, command.finding?.size ?? null);
    default:
      return [];
  }
}

function known(field: string, list: readonly { readonly id: string }[], id: string): readonly FieldError[] {
  return list.some((each) => each.id === id) ? [] : [{ field, rule: "item-unknown", received: received(id) }];
}

function checkSubject(file: ObjectFile, { of, item }: ObjectFile["photographs"][number]) {
  if (of === "whole" || item === null) return [];
  const lists = {
    point: [...checklistOf(file.family).points, ...file.observations],
    mark: file.marks,
    condition: file.conditions,
    event: file.events,
    anomaly: file.anomalies,
  };
  return known("item", lists[of], item);
}

/** A point of the checklist of another family stays where it was noted before the family was mended. */
function checkPoint(file: ObjectFile, item: ObjectFile["observations"][number]): readonly FieldError[] {
  if (item.point === null) return [];
  const point = checklistOf(file.family).points.find(({ id }) => id === item.point);
  const isThere = file.observations.some((each) => each.point === item.point);
  if (!point) return isThere ? [] : known("point", [], item.point);
  return item.option === null ? [] : known("option", point.options, item.option);
}

function checkOwners(file: ObjectFile, item: ObjectFile["events"][number]): readonly FieldError[] {
  const loop = loopOf(file.events, item);
  if (loop === null || loop.isDatedApart) return [];
  const { owners } = loop;
  return [{ field: "to", rule: "owner-loop", received: received(item.to), params: { owners } }];
}

function checkSize(file: ObjectFile, size: string | null): readonly FieldError[] {
  if (size === null) return [];
  const sizes = file.line?.sizes.map(({ name }) => name) ?? [];
  if (sizes.includes(size)) return [];
  const params = { allowed: sizes.join(", ") };
  return [
    {
      field: "size",
      rule: sizes.length > 0 ? "one-of" : "size-without-line",
      received: received(size),
      params,
    },
  ];
}
