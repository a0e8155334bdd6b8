import { changeFile } from "#core/object-files/change-file";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import { emptyFile, type ObjectFile } from "#core/object-files/object-file";
import { readCommand } from "#core/object-files/read-command";
import type { Family } from "#core/object-files/vocabulary";

export const STAMP = { by: { id: id(900), name: "Ottoline Sarn" }, at: "2026-11-20T10:00:00.000Z" };
export const THIS_YEAR = 2026;

/** A uuid that is easy to tell from others. */
export function id(n: number): string {
  return `00000000-0000-4000-8000-${String(n).padStart(12, "0")}`;
}
export const hash = (n: number) => n.toString(16).padStart(64, "0");

/** A command as its form is typed. */
export type Typed = readonly [name: string, fields: Readonly<Record<string, string>>];

/** What is wrong with a form, as `field rule`; empty when nothing is. */
export function faults(name: string, fields: Readonly<Record<string, string>>): readonly string[] {
  const read = readCommand(name, fields, STAMP);
  return read.ok ? [] : read.error.map(({ field, rule }) => `${field} ${rule}`);
}

/** A file to which everything was done, in order; a refusal is an error of the test. */
export function fileOf(family: Family, ...typed: readonly Typed[]): ObjectFile {
  return typed.reduce((file, each) => done(file, each), emptyFile("A thing", family));
}

export function done(file: ObjectFile, [name, fields]: Typed): ObjectFile {
  const read = readCommand(name, fields, STAMP);
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.error)}`);
  const changed = changeFile(file, read.value);
  if (!changed.ok) throw new Error(`${name}: ${JSON.stringify(changed.error)}`);
  return changed.value;
}

/** What keeps a command from being done to a file, as `field rule`. */
export function refusedBy(file: ObjectFile, [name, fields]: Typed): readonly string[] {
  const read = readCommand(name, fields, STAMP);
  if (!read.ok) return read.error.map(({ field, rule }) => `${field} ${rule}`);
  const changed = changeFile(file, read.value);
  return changed.ok ? [] : changed.error.map(({ field, rule }) => `${field} ${rule}`);
}

export function entry(slug: string, more: Partial<MatchedEntry> = {}): MatchedEntry {
  return {
    ...{ slug, title: slug, kind: "mark", state: "verified", makerPart: "made", period: null },
    maker: { slug: "pell-and-daughters", name: "Pell & Daughters" },
    revision: { id: id(500), number: 1, contentHash: hash(1) },
    ...{ placeOnObject: "", reproductions: "", imitatedBy: [], marksPerObject: null },
    ...more,
  };
}

/** The form that pins an entry to a mark, as it stands today. */
export function pin(mark: number, { slug, title, revision }: MatchedEntry, more = {}): Typed {
  const fields = { mark: id(mark), entry: slug, title, revision: revision.id };
  const pinned = { revision_number: String(revision.number), content_hash: revision.contentHash };
  return ["match", { ...fields, ...pinned, ...more }];
}
