import type { FileCommand } from "./commands.ts";
import type { FileDocument, MarkFound, ObjectFile } from "./object-file.ts";
import { isSameStatement } from "./same-statement.ts";

/** What a command changes, as it stands in a file: two changes of the same part get in each other's way, others do not. */
export function partTouched(file: ObjectFile, command: FileCommand): unknown {
  switch (command.is) {
    case "describe":
      return [file.title, file.family, file.description];
    case "line":
      return file.line;
    case "finding":
      return file.finding;
    case "order":
      return file.events.map(({ id }) => id);
    case "observation":
      return file.observations.find((each) => isSameObservation(each, command.item)) ?? null;
    case "stance":
      return file.stances.find((each) => isSameStance(each, command.item)) ?? null;
    case "mark":
      return withoutMatch(find(file.marks, command.item.id));
    case "match":
      return find(file.marks, command.mark)?.match ?? null;
    case "document":
      return withoutScans(find(file.documents, command.item.id));
    case "scan":
      return find(find(file.documents, command.document)?.scans ?? [], command.scan.id);
    case "pieces":
      return file.pieces.filter((each) => command.items.some((item) => isSameStatement(each, item)));
    case "photograph":
      return find(file.photographs, command.item.id);
    case "measurement":
      return find(file.measurements, command.item.id);
    case "event":
      return find(file.events, command.item.id);
    case "condition":
      return find(file.conditions, command.item.id);
    case "anomaly":
      return find(file.anomalies, command.item.id);
    case "remove":
      return command.list === "scans"
        ? find(find(file.documents, command.document)?.scans ?? [], command.id)
        : find<{ readonly id: string }>(file[command.list], command.id);
  }
}

/** A point of the checklist is observed once, whoever did. */
export function isSameObservation(
  a: Pick<ObjectFile["observations"][number], "id" | "point">,
  b: Pick<ObjectFile["observations"][number], "id" | "point">,
): boolean {
  return a.id === b.id || (a.point !== null && a.point === b.point);
}

/** An explanation of an anomaly is weighed once. */
export function isSameStance(
  a: Pick<ObjectFile["stances"][number], "id" | "anomaly" | "explanation">,
  b: Pick<ObjectFile["stances"][number], "id" | "anomaly" | "explanation">,
): boolean {
  return a.id === b.id || (a.anomaly === b.anomaly && a.explanation === b.explanation);
}

function find<T extends { readonly id: string }>(list: readonly T[], id: string): T | null {
  return list.find((each) => each.id === id) ?? null;
}

function withoutMatch(mark: MarkFound | null): Omit<MarkFound, "match"> | null {
  if (mark === null) return null;
  const { match: _, ...rest } = mark;
  return rest;
}

function withoutScans(document: FileDocument | null): Omit<FileDocument, "scans"> | null {
  if (document === null) return null;
  const { scans: _, ...rest } = document;
  return rest;
}
