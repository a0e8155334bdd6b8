import type { FileCommand } from "./commands.ts";
import type { ListName, ObjectFile } from "./object-file.ts";

const LIST_OF = {
  photograph: "photographs",
  observation: "observations",
  measurement: "measurements",
  event: "events",
  condition: "conditions",
  anomaly: "anomalies",
  stance: "stances",
} as const satisfies Readonly<Record<string, ListName>>;

/**
 * What of a file a command would change, as it stands: compared in two versions it says whether somebody else changed
 * the same meanwhile. Null for what is not there.
 */
export function touchedPart(file: ObjectFile, command: FileCommand): unknown {
  const markOf = (id: string) => file.marks.find((each) => each.id === id);
  const documentOf = (id: string) => file.documents.find((each) => each.id === id);
  switch (command.is) {
    case "describe":
      return [file.title, file.family, file.description];
    case "line":
      return file.line;
    case "mark": {
      const mark = markOf(command.item.id);
      return mark ? { ...mark, match: null } : null;
    }
    case "match":
      return markOf(command.mark)?.match ?? null;
    case "order":
      return file.events.map(({ id }) => id);
    case "document": {
      const document = documentOf(command.item.id);
      return document ? { ...document, scans: [] } : null;
    }
    case "scan":
      return documentOf(command.document)?.scans.find(({ id }) => id === command.scan.id) ?? null;
    case "finding":
      return file.finding;
    case "remove":
      return command.list === "scans"
        ? (documentOf(command.document)?.scans.find(({ id }) => id === command.id) ?? null)
        : (file[command.list].find(({ id }) => id === command.id) ?? null);
    default: {
      const items: readonly { readonly id: string }[] = file[LIST_OF[command.is]];
      return items.find(({ id }) => id === command.item.id) ?? null;
    }
  }
}
