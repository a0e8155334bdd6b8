import { LISTS, type ListName, type ObjectFile } from "./object-file.ts";

/** A field that two versions say differently; empty where one says nothing. */
type FieldChange = { readonly field: string; readonly before: string; readonly after: string };
/** What two versions of a file say differently of one thing. */
export type FileChange = {
  readonly part: ListName | "file" | "line" | "finding";
  readonly is: "added" | "removed" | "changed";
  readonly fields: readonly FieldChange[];
};

/** What changed from one version to another, part by part, in the order in which a file is read. */
export function differenceOfFiles(before: ObjectFile, after: ObjectFile): readonly FileChange[] {
  const head = ({ title, family, description }: ObjectFile) => ({ title, family, description });
  return [
    ...changeOf("file", head(before), head(after)),
    ...changeOf("line", before.line, after.line),
    ...LISTS.flatMap((list) => changesOfList(list, before[list], after[list])),
    ...changeOf("finding", before.finding, after.finding),
  ];
}

type Item = { readonly id: string };

function changesOfList(
  list: ListName,
  before: readonly Item[],
  after: readonly Item[],
): readonly FileChange[] {
  const ids = [...new Set([...before, ...after].map(({ id }) => id))];
  const changes = ids.flatMap((id) => {
    const find = (items: readonly Item[]) => items.find((each) => each.id === id) ?? null;
    return changeOf(list, find(before), find(after));
  });
  const kept = (items: readonly Item[], others: readonly Item[]) =>
    items.map(({ id }) => id).filter((id) => others.some((each) => each.id === id));
  const [was, is] = [kept(before, after).join(" "), kept(after, before).join(" ")];
  const order: FileChange = {
    part: list,
    is: "changed",
    fields: [{ field: "order", before: was, after: is }],
  };
  return was === is ? changes : [...changes, order];
}

function changeOf(
  part: FileChange["part"],
  before: object | null,
  after: object | null,
): readonly FileChange[] {
  const [was, is] = [flat(before), flat(after)];
  const names = [...new Set([...was.keys(), ...is.keys()])];
  const fields = names
    .map((field) => ({ field, before: was.get(field) ?? "", after: is.get(field) ?? "" }))
    .filter((each) => each.before !== each.after);
  if (fields.length === 0 && (before === null) === (after === null)) return [];
  return [{ part, is: before === null ? "added" : after === null ? "removed" : "changed", fields }];
}

/** Every text and number of a thing, by the path to it; ids are left out, since nobody reads them. */
function flat(value: object | null, path = ""): Map<string, string> {
  const all = new Map<string, string>();
  for (const [name, each] of Object.entries(value ?? {})) {
    if (name === "id" || each === null || each === "") continue;
    const at = path === "" ? name : `${path}.${name}`;
    if (typeof each === "object") for (const [deep, text] of flat(each, at)) all.set(deep, text);
    else all.set(at, String(each));
  }
  return all;
}
