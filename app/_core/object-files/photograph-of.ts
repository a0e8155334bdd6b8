import type { FileCommand } from "./commands.ts";
import type { FileImage } from "./kept-file.ts";
import type { PhotographSubject } from "./vocabulary.ts";

const SUBJECTS: Readonly<Partial<Record<FileCommand["is"], PhotographSubject>>> = {
  observation: "point",
  mark: "mark",
  condition: "condition",
  event: "event",
  anomaly: "anomaly",
};

/**
 * What adds the image that came with an item as the item's photograph, or as a document's scan; null where an item has
 * none.
 * @param id of the new photograph, given by the form, so that sent twice it is added once
 */
export function photographOf(command: FileCommand, image: FileImage, id: string): FileCommand | null {
  if (command.is === "document") {
    const scan = { id, sha256: image.sha256, type: "image/jpeg", name: command.item.title } as const;
    return { is: "scan", document: command.item.id, scan };
  }
  const of = SUBJECTS[command.is];
  if (of === undefined || !("item" in command)) return null;
  const item = command.is === "observation" ? (command.item.point ?? command.item.id) : command.item.id;
  return { is: "photograph", item: { id, ...image, shows: "", credit: "", of, item } };
}
