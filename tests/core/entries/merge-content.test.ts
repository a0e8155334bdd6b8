import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergeContent } from "#core/entries/merge-content";

const fields = fc.dictionary(
  fc.constantFrom("title", "words", "emblem", "a-1", "a-2"),
  fc.constantFrom("", "x", "y", "z"),
);
const groups = (name: string) => (name.startsWith("a-") ? "a" : name);
const tidy = (side: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(side).filter(([, text]) => text !== ""));

describe("putting two changes together", () => {
  it("takes what one side changed, and lays open what both did", () => {
    const base = { title: "Anvil", words: "TB", emblem: "anvil" };
    const mine = { title: "Anvil, crowned", words: "T B", emblem: "anvil" };
    const theirs = { title: "Anvil", words: "T·B", emblem: "crowned anvil" };
    expect(mergeContent(base, mine, theirs)).toEqual({
      merged: { title: "Anvil, crowned", words: "T B", emblem: "crowned anvil" },
      conflicts: [
        { group: "words", base: { words: "TB" }, mine: { words: "T B" }, theirs: { words: "T·B" } },
      ],
    });
  });

  it("takes fields of a group only together", () => {
    const base = { "a-1": "x" };
    const { merged, conflicts } = mergeContent(base, { "a-1": "x", "a-2": "mine" }, { "a-1": "z" }, groups);
    expect(merged).toEqual({ "a-1": "x", "a-2": "mine" });
    expect(conflicts).toHaveLength(1);
  });

  it("is no conflict where one side changed nothing, or both the same", () => {
    fc.assert(
      fc.property(fields, fields, (base, side) => {
        expect(mergeContent(base, side, base, groups)).toEqual({ merged: tidy(side), conflicts: [] });
        expect(mergeContent(base, base, side, groups)).toEqual({ merged: tidy(side), conflicts: [] });
        expect(mergeContent(base, side, side, groups)).toEqual({ merged: tidy(side), conflicts: [] });
      }),
    );
  });

  it("loses no change of either side: each is in the merged text or laid open", () => {
    fc.assert(
      fc.property(fields, fields, fields, (base, mine, theirs) => {
        const { merged, conflicts } = mergeContent(base, mine, theirs, groups);
        const open = new Set(conflicts.map(({ group }) => group));
        for (const side of [mine, theirs])
          for (const name of new Set([...Object.keys(base), ...Object.keys(side)]))
            if ((side[name] ?? "") !== (base[name] ?? "") && !open.has(groups(name)))
              expect(merged[name] ?? "").toBe(side[name] ?? "");
      }),
    );
  });

  it("finds the same conflicts whoever is mine", () => {
    fc.assert(
      fc.property(fields, fields, fields, (base, mine, theirs) => {
        const groupsOf = (a: typeof mine, b: typeof mine) =>
          mergeContent(base, a, b, groups)
            .conflicts.map(({ group }) => group)
            .toSorted();
        expect(groupsOf(mine, theirs)).toEqual(groupsOf(theirs, mine));
      }),
    );
  });
});
