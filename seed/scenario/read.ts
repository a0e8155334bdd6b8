/** One record of a chapter: its sort and key, and its fields. */
export interface ChapterRecord {
  sort: string;
  key: string;
  fields: ReadonlyMap<string, string>;
  /** File and line, for messages. */
  where: string;
}

/**
 * Reads a chapter of the scenario: records apart by blank lines, the first line `sort key`,
 * the others `field: value`. Errors name the line, the rule and the value received.
 */
export function readChapter(text: string, name: string): ChapterRecord[] {
  const records: ChapterRecord[] = [];
  let fields: Map<string, string> | undefined;
  text.split("\n").forEach((line, index) => {
    const where = `${name}:${index + 1}`;
    if (line.trim() === "") {
      fields = undefined;
      return;
    }
    if (!fields) {
      const head = /^([a-z]+) ([a-z0-9-]+)$/.exec(line);
      if (!head) throw new Error(`${where}: a record must begin with "sort key". Received "${line}".`);
      fields = new Map();
      records.push({ sort: head[1] ?? "", key: head[2] ?? "", fields, where });
      return;
    }
    const field = /^([a-z]+):(?: (.*))?$/.exec(line);
    if (!field) throw new Error(`${where}: a line must be "field: value". Received "${line}".`);
    const label = field[1] ?? "";
    if (fields.has(label))
      throw new Error(`${where}: a field must occur once in a record. Received "${label}" again.`);
    fields.set(label, (field[2] ?? "").trim());
  });
  return records;
}

/** Reads `CODE: full name` lines: the sources that the chapters cite by code. */
export function readSources(text: string): Map<string, string> {
  return new Map(
    text
      .split("\n")
      .filter((line) => line.trim() !== "")
      .map((line) => {
        const at = line.indexOf(": ");
        return [line.slice(0, at), line.slice(at + 2)] as const;
      }),
  );
}

/** `OLD p. 22` said in full. Refuses a code that the list of sources does not have. */
export function citeInFull(citation: string, sources: ReadonlyMap<string, string>): string {
  const match = /^([A-Z][A-Z0-9]+),?\s*(.*)$/.exec(citation.trim());
  const full = match ? sources.get(match[1] ?? "") : undefined;
  if (!match || !full)
    throw new Error(`sources: must begin with a code from sources.txt. Received "${citation}".`);
  return match[2] ? `${full}, ${match[2]}` : full;
}
