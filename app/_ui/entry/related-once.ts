import type { EntryView } from "#core/entries/entry";

type Relation = EntryView["relations"][number];
export type Related = { readonly entry: Relation["entry"]; readonly kinds: readonly Relation["kind"][] };

/** Each related entry once, with all that it is to this one, in the order of its first mention. */
export function relatedOnce(relations: readonly Relation[]): readonly Related[] {
  const slugs = [...new Set(relations.map(({ entry }) => entry.slug))];
  return slugs.flatMap((slug) => {
    const same = relations.filter(({ entry }) => entry.slug === slug);
    const [first] = same;
    return first ? [{ entry: first.entry, kinds: same.map(({ kind }) => kind) }] : [];
  });
}
