import { readAddress } from "../dating/read-worksheet.ts";
import type { FileCommand } from "./commands.ts";
import type { FileFields } from "./file-fields.ts";

/** Reads the pieces of a worksheet out of its address; `ids` has one for each. */
export function readPieces(read: FileFields): FileCommand {
  const { worksheet, errors } = readAddress(read.raw("worksheet"));
  const ids = read.ids("ids");
  const { pieces } = worksheet;
  read.errors.push(...errors);
  if (pieces.length === 0 && errors.length === 0) read.refuse("worksheet", "worksheet-empty", "");
  const [first] = ids;
  if (ids.length < pieces.length) read.refuse("ids", "item-id", first ?? "");
  return { is: "pieces", items: pieces.map((piece, i) => ({ ...piece, id: ids[i] ?? "" })) };
}
