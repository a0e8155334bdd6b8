import type { Photograph } from "../photographs/photograph.ts";
import type { EntryContent } from "./entry.ts";

/** What a field of a content is, and so how two of it are shown beside each other. */
const HOW = {
  title: "text",
  kind: "value",
  field: "value",
  maker: "value",
  makerPart: "value",
  description: "text",
  words: "text",
  emblem: "text",
  frame: "text",
  technique: "value",
  material: "text",
  placeOnObject: "text",
  colours: "list",
  sizeMm: "value",
  period: "period",
  periodFromReason: "text",
  periodToReason: "text",
  distinguish: "text",
  reproductions: "text",
  relations: "list",
  citations: "list",
  sources: "list",
} as const satisfies Readonly<Record<keyof EntryContent, "text" | "value" | "list" | "period">>;

export type ContentField = keyof typeof HOW;
type How = (typeof HOW)[ContentField];

export type PhotographChange =
  | { readonly is: "added"; readonly after: Photograph }
  | { readonly is: "removed"; readonly before: Photograph }
  | { readonly is: "changed"; readonly before: Photograph; readonly after: Photograph };

/** Where two revisions differ, in the order in which an entry's page says it. */
export type Difference =
  | { readonly how: How; readonly field: ContentField }
  | {
      readonly how: "photographs";
      readonly field: "photographs";
      readonly changes: readonly PhotographChange[];
      /** The same photographs in another order. */
      readonly reordered: boolean;
    };

type Version = { readonly content: EntryContent; readonly photographs: readonly Photograph[] };

/** Says which fields differ, and how each is to be shown. */
export function differenceOf(before: Version, after: Version): readonly Difference[] {
  const fields = (Object.entries(HOW) as [ContentField, How][])
    .filter(([field]) => plain(before.content[field]) !== plain(after.content[field]))
    .map(([field, how]) => ({ field, how }));
  const changes = photographChanges(before.photographs, after.photographs);
  const order = ({ photographs }: Version) => photographs.map(({ sha256 }) => sha256).join();
  const reordered = changes.every(({ is }) => is === "changed") && order(before) !== order(after);
  return changes.length > 0 || reordered
    ? [...fields, { field: "photographs", how: "photographs", changes, reordered }]
    : fields;
}

/** Stored contents may name their parts in another order. */
function plain(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(plain).join()}]`;
  if (value === null || typeof value !== "object") return JSON.stringify(value) ?? "";
  const parts = Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1));
  return `{${parts.map(([name, part]) => `${name}:${plain(part)}`).join()}}`;
}

function photographChanges(
  before: readonly Photograph[],
  after: readonly Photograph[],
): readonly PhotographChange[] {
  const had = new Map(before.map((each) => [each.sha256, each]));
  const has = new Set(after.map(({ sha256 }) => sha256));
  const said = ({ id: _, ...facts }: Photograph) => plain(facts);
  return [
    ...before
      .filter(({ sha256 }) => !has.has(sha256))
      .map((each): PhotographChange => ({ is: "removed", before: each })),
    ...after.flatMap((each): PhotographChange[] => {
      const was = had.get(each.sha256);
      if (!was) return [{ is: "added", after: each }];
      return said(was) === said(each) ? [] : [{ is: "changed", before: was, after: each }];
    }),
  ];
}

/** What stands in only one of two lists, and what in both, in the order of the later one. */
export function listDifference<T>(
  before: readonly T[],
  after: readonly T[],
): { readonly removed: readonly T[]; readonly added: readonly T[]; readonly kept: readonly T[] } {
  const had = new Set(before.map(plain));
  const has = new Set(after.map(plain));
  return {
    removed: before.filter((each) => !has.has(plain(each))),
    added: after.filter((each) => !had.has(plain(each))),
    kept: after.filter((each) => had.has(plain(each))),
  };
}
