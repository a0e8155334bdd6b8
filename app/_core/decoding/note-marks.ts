import type { Note } from "./decoded.ts";
import { EXEMPTIONS, type HallmarkRow } from "./hallmark-table.ts";

/** What an office's and a standard's mark say besides a date. */
export function noteMarks(
  office: HallmarkRow | undefined,
  standard: HallmarkRow | undefined,
): readonly Note[] {
  const notes: Note[] = [];
  if (office) {
    const { office: name = "", mark = "", imported = "" } = office;
    notes.push({ is: "office", params: { office: name, mark, imported: imported || "none" } });
    if (office.note) notes.push({ is: "remark", params: { text: office.note } });
  }
  if (standard) {
    const { mark = "", metal = "", fineness = "" } = standard;
    notes.push({ is: "fineness", params: { mark, metal, fineness } });
    const exempt = EXEMPTIONS.find((row) => row.metal === metal);
    if (exempt?.grams) notes.push({ is: "exempt", params: { metal, grams: exempt.grams } });
  }
  return notes;
}
