/** Texts by the names of their fields; a field that is missing is empty. */
type Fields = Readonly<Record<string, string>>;

/** What two sides made of the same thing: each text by its field. */
export type Conflict = {
  /** The field, or the group of fields that are chosen together. */
  readonly group: string;
  readonly base: Fields;
  readonly mine: Fields;
  readonly theirs: Fields;
};

export type Merged = {
  /** Everything that one side alone changed, or both alike; of what is in conflict, mine. */
  readonly merged: Fields;
  readonly conflicts: readonly Conflict[];
};

/**
 * Puts two changes of the same text together: what one side changed is taken from it, and what both changed, each
 * otherwise, is laid open for a person to choose from.
 * @param groupOf which fields are only ever taken together
 */
export function mergeContent(
  base: Fields,
  mine: Fields,
  theirs: Fields,
  groupOf: (field: string) => string = (field) => field,
): Merged {
  const names = [...new Set([base, mine, theirs].flatMap((side) => Object.keys(side)))];
  const groups = new Map<string, string[]>();
  for (const name of names) groups.set(groupOf(name), [...(groups.get(groupOf(name)) ?? []), name]);
  const merged: Record<string, string> = {};
  const conflicts: Conflict[] = [];
  for (const [group, fields] of groups) {
    const [from, my, their] = [base, mine, theirs].map((side) => pick(side, fields)) as [
      Fields,
      Fields,
      Fields,
    ];
    const unchanged = same(my, from, fields);
    Object.assign(merged, unchanged ? their : my);
    if (!unchanged && !same(their, from, fields) && !same(my, their, fields))
      conflicts.push({ group, base: from, mine: my, theirs: their });
  }
  return { merged, conflicts };
}

const pick = (side: Fields, fields: readonly string[]): Fields =>
  Object.fromEntries(fields.flatMap((field) => (side[field] ? [[field, side[field]]] : [])));

const same = (a: Fields, b: Fields, fields: readonly string[]): boolean =>
  fields.every((field) => (a[field] ?? "") === (b[field] ?? ""));
