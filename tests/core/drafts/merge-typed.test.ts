import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { closeGaps, mergeTyped } from "#core/drafts/merge-typed";
import { settleConflicts } from "#core/entries/settle-conflicts";

/** A form with these citations, one after another: `title` or `title, year`. */
const citing = (...works: readonly string[]) =>
  Object.fromEntries(
    works.flatMap((work, i) => {
      const [title = "", year = ""] = work.split(", ");
      return [
        [`citation-${i + 1}-kind`, "book"],
        [`citation-${i + 1}-title`, title],
        ...(year ? [[`citation-${i + 1}-year`, year]] : []),
      ];
    }),
  );
const works = (typed: Readonly<Record<string, string>>) =>
  Object.keys(typed)
    .filter((name) => name.endsWith("-title"))
    .map((name) => [typed[name], typed[name.replace("title", "year")]].filter((each) => each).join(", "));
const merge = (base: readonly string[], mine: readonly string[], theirs: readonly string[]) =>
  mergeTyped(citing(...base), citing(...mine), citing(...theirs));

describe("citations of two sides", () => {
  it.each([
    ["both added one", ["A"], ["A", "B"], ["A", "C"], ["A", "B", "C"]],
    ["one put another first", ["A", "B"], ["C", "A", "B"], ["A", "B"], ["A", "B", "C"]],
    [
      "one took the first out, the other changed the second",
      ["A", "B"],
      ["B"],
      ["A", "B, 1931"],
      ["B, 1931"],
    ],
    ["both added the same", ["A"], ["A", "B, 1931"], ["B, 1931", "A"], ["A", "B, 1931"]],
    ["both took the same out", ["A", "B"], ["B"], ["B"], ["B"]],
    ["nobody cites", [], [], [], []],
  ])("need no choice when %s", (_, base, mine, theirs, together) => {
    const { merged, conflicts } = merge(base, mine, theirs);
    expect(conflicts).toEqual([]);
    expect(works(closeGaps(merged))).toEqual(together);
  });

  it("are chosen one by one where both changed the same one", () => {
    const both = merge(["A, 1901", "B, 1911"], ["A, 1902", "B, 1912", "C"], ["A, 1903", "B, 1913", "D"]);
    expect(both.conflicts.map(({ group }) => group)).toEqual(["citation-1", "citation-2"]);
    const chosen = settleConflicts(both, (group) => ({
      choice: group === "citation-1" ? "mine" : "theirs",
      own: "",
    }));
    expect(works(closeGaps(chosen ?? {}))).toEqual(["A, 1902", "B, 1913", "C", "D"]);
  });

  it("are told apart by title where one author wrote several", () => {
    const by = (...titles: readonly string[]) =>
      Object.fromEntries(
        titles.flatMap((title, i) => [
          [`citation-${i + 1}-author`, "M. Oldacre"],
          [`citation-${i + 1}-title`, title],
        ]),
      );
    const { merged, conflicts } = mergeTyped(by("Touches"), by("Moulds", "Touches"), by("Touches", "Ladles"));
    expect(conflicts).toEqual([]);
    expect(works(closeGaps(merged))).toEqual(["Touches", "Moulds", "Ladles"]);
  });

  it("lose none that either side added, in whatever order", () => {
    const titles = fc.uniqueArray(fc.constantFrom(..."ABCDEFGH"), { maxLength: 6 });
    fc.assert(
      fc.property(titles, titles, titles, (base, mine, theirs) => {
        const { merged, conflicts } = merge(base, mine, theirs);
        const kept = works(closeGaps(merged));
        expect(conflicts).toEqual([]);
        expect(new Set(kept).size).toBe(kept.length);
        const added = [...mine, ...theirs].filter((each) => !base.includes(each));
        const stayed = base.filter((each) => mine.includes(each) && theirs.includes(each));
        expect([...kept].sort()).toEqual([...new Set([...added, ...stayed])].sort());
      }),
    );
  });
});
