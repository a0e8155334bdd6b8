import type { AnomalyKind, ItemRef, Said } from "./derived.ts";
import type { MatchedEntry } from "./matched-entry.ts";
import type { MarkFound, ObjectFile } from "./object-file.ts";

type Found = readonly Said<AnomalyKind>[];
type Matched = { readonly mark: MarkFound; readonly entry: MatchedEntry };

/** Marks with their entries; what was added later is no mark of the making. */
function matched({ marks }: ObjectFile, entries: readonly MatchedEntry[]): readonly Matched[] {
  return marks.flatMap((mark) => {
    const entry = entries.find(({ slug }) => slug === mark.match?.entry);
    return entry && mark.belongs !== "added later" ? [{ mark, entry }] : [];
  });
}

const refs = (found: readonly Matched[]): readonly ItemRef[] =>
  found.map(({ mark }) => ({ list: "marks", id: mark.id }));

/**
 * More marks of one maker than its entries say an object bears. Where they say nothing, the same mark twice is worth a
 * question all the same, since one is usual; different marks of one maker are not.
 */
export function doubledMarks(file: ObjectFile, entries: readonly MatchedEntry[]): Found {
  const all = matched(file, entries).filter(({ entry }) => entry.maker !== null && entry.kind === "mark");
  const makers = [...new Set(all.flatMap(({ entry }) => entry.maker?.slug ?? []))];
  return makers.flatMap((slug) => {
    const own = all.filter(({ entry }) => entry.maker?.slug === slug);
    const said = own.flatMap(({ entry }) => entry.marksPerObject ?? []);
    const most = said.length > 0 ? Math.max(...said) : null;
    const same = own.filter(({ entry }) => own.filter((each) => each.entry.slug === entry.slug).length > 1);
    const doubled = most === null ? same : own.length > most ? own : [];
    const [first] = doubled;
    if (!first) return [];
    const params = { maker: first.entry.maker?.name ?? "", count: doubled.length, said: most ?? 0 };
    return [{ is: "doubled-mark", params, items: refs(doubled) }];
  });
}

/** Marks of two that are both said to have made it; a decorator, a shop or an office beside a maker is usual. */
export function twoMakers(file: ObjectFile, entries: readonly MatchedEntry[]): Found {
  const makers = matched(file, entries).filter(
    ({ entry }) => entry.maker !== null && (entry.makerPart === null || entry.makerPart === "made"),
  );
  const names = [...new Set(makers.flatMap(({ entry }) => entry.maker?.name ?? []))];
  if (names.length < 2) return [];
  return [
    { is: "two-makers", params: { makers: names.join(", "), count: names.length }, items: refs(makers) },
  ];
}

/** A mark where its entry does not say that it stands. */
export function outOfPlace(file: ObjectFile, entries: readonly MatchedEntry[]): Found {
  return matched(file, entries).flatMap(({ mark, entry }) => {
    const [here, there] = [wordsOf(mark.place), wordsOf(entry.placeOnObject)];
    if (here.length === 0 || there.length === 0 || here.some((word) => there.includes(word))) return [];
    const params = { title: entry.title, place: mark.place, usual: entry.placeOnObject };
    return [{ is: "mark-out-of-place", params, items: refs([{ mark, entry }]) }];
  });
}

const SMALL = new Set(
  "a an and at below between by from in inside its near of on or over side sometimes the to under usually with".split(
    " ",
  ),
);

/** Words that name a place, without what only joins them; "hulls" is where "hull" is. */
function wordsOf(place: string): readonly string[] {
  const words = place.toLowerCase().match(/\p{L}+/gu) ?? [];
  return words
    .filter((word) => !SMALL.has(word))
    .map((word) => (word.length > 3 ? word.replace(/s$/, "") : word));
}

/** A look-up that found an entry's imitation near it, or a match with what is known to imitate another. */
export function reproductionsNear(file: ObjectFile, entries: readonly MatchedEntry[]): Found {
  return matched(file, entries).flatMap(({ mark, entry }) => {
    const near = mark.match?.near ?? [];
    const copies = near.filter((each) => entry.imitatedBy.includes(each.entry)).map(({ title }) => title);
    const originals = entries
      .filter(({ imitatedBy }) => imitatedBy.includes(entry.slug))
      .map(({ title }) => title);
    if (copies.length + originals.length === 0) return [];
    const params = { title: entry.title, copies: copies.join(", "), originals: originals.join(", ") };
    return [{ is: "reproduction-near", params, items: refs([{ mark, entry }]) }];
  });
}
