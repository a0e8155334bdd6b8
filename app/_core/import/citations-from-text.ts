import type { Citation } from "../entries/citation.ts";
import { CITATION_PARTS, readCitation } from "../entries/read-citation.ts";
import type { ColumnReader } from "./columns.ts";

/**
 * Citations as one cell holds them, parted by `;`, each `kind | author | title | year | place in it | address | seen`;
 * parts at the end may be left out.
 */
export function citationsFromText(read: ColumnReader): readonly Citation[] {
  return read.list("citations").map((text) => {
    const texts = text.split("|").map((part) => part.trim());
    const more = texts.length > CITATION_PARTS.length;
    if (more) read.refuse("citations", "parts-most", text, { most: CITATION_PARTS.length });
    const parts = Object.fromEntries(CITATION_PARTS.map((part, i) => [part, texts[i] ?? ""]));
    return readCitation(parts, (part, rule, value, params) =>
      read.refuse("citations", rule, value === "" ? text : value, { ...params, part }),
    );
  });
}
