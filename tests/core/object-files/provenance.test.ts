import { describe, expect, it } from "vitest";
import { estimateOf, evidenceOf } from "#core/object-files/evidence";
import type { ObjectFile } from "#core/object-files/object-file";
import { checkProvenance } from "#core/object-files/provenance";
import { fileOf, id, THIS_YEAR, type Typed } from "./story.ts";

const step = (n: number, kind: string, from: string, to: string, when: string, more = {}): Typed => [
  "event",
  { id: id(n), kind, from, to, when, ...more },
];
const line: Typed = ["line", { name: "Gull", sizes: "22", unit: "cm", when: "1914/1927" }];

const check = (file: ObjectFile) =>
  checkProvenance(file, evidenceOf(file, []), estimateOf(file, [], THIS_YEAR));
const chained = (...steps: readonly Typed[]) => check(fileOf("ceramics", ...steps));
const words = (
  said: readonly { readonly is: string; readonly items: readonly { readonly id: string }[] }[],
) => said.map(({ is, items }) => [is, ...items.map((item) => Number(item.id.slice(-3)))]);

describe("a chain of owners", () => {
  it("is written as museums do: straight, not known to be straight, with a gap", () => {
    const { chain } = chained(
      step(1, "sold", "a shop", "Ada", "1921"),
      step(2, "inherited", "Ada", "Ben", "1950", { passage: "by descent to" }),
      step(3, "sold", "", "Cyn", "1960"),
      step(4, "sold", "Dov", "Eve", "1970"),
      step(5, "moved", "", "Eve", "1980"),
      step(6, "given", "Eve", "Fay", "1990", { gap_before: "on" }),
    );
    expect(chain.map(({ joined }) => joined)).toEqual([
      "first",
      "direct",
      "not known to be direct",
      "not known to be direct",
      "direct",
      "gap",
    ]);
  });

  it("shows gaps that were marked, and those that nobody marked", () => {
    const { gaps, questions } = chained(
      step(1, "sold", "a shop", "Ada", "1921"),
      step(2, "sold", "", "Ben", "1950"),
      step(3, "given", "Cyn", "Dov", "1960"),
      step(4, "given", "Dov", "Eve", "1970", { gap_before: "on" }),
    );
    expect(words(gaps)).toEqual([
      ["gap", 1, 2],
      ["gap-marked", 3, 4],
    ]);
    expect(words(questions).filter(([is]) => is === "owner-breaks")).toEqual([["owner-breaks", 2, 3]]);
  });

  it("shows that nobody knows where it was in its first years", () => {
    const { gaps } = chained(line, step(1, "given", "", "Ada", "1971"));
    expect(gaps).toMatchObject([{ is: "gap-at-start", params: { first: "1971" } }]);
    expect(gaps[0]?.params.made).toBeGreaterThanOrEqual(1914);
    expect(gaps[0]?.params.made).toBeLessThanOrEqual(1928);
    expect(chained(line, step(1, "given", "", "Ada", "1922")).gaps).toEqual([]);
  });
});

describe("contradictions of a chain", () => {
  it.each([
    ["1921", "1920", [["out-of-order", 1, 2]]],
    ["1921", "1921-05", []],
    ["1921/1930", "1925", []],
    ["1921~", "1919", [["out-of-order", 1, 2]]],
  ])("a step of %s before one of %s", (first, second, expected) => {
    const { contradictions } = chained(
      step(1, "given", "", "Ada", first),
      step(2, "given", "Ada", "Ben", second),
    );
    expect(words(contradictions)).toEqual(expected);
  });

  it("an owner who had it before it could have been made", () => {
    const { contradictions } = chained(line, step(1, "given", "", "Ada", "1913-12"));
    expect(contradictions).toMatchObject([
      { is: "before-it-was-made", params: { who: "Ada", date: "1913-12", notBefore: "1914-01-01" } },
    ]);
    expect(chained(line, step(1, "given", "", "Ada", "1914")).contradictions).toEqual([]);
  });

  it.each(["1912", "1930"])("a making told of %s, when the line was not made", (when) => {
    const { contradictions } = chained(line, step(1, "made", "", "", when));
    expect(contradictions).toMatchObject([
      { is: "made-against-object", params: { notBefore: "1914-01-01", notAfter: "1927-12-31" } },
    ]);
  });

  it("owners in a circle that is older than the rule, and one who had it back", () => {
    const back = [step(1, "sold", "Ada", "Ben", "1921"), step(2, "sold", "Ben", "Ada", "1930")];
    const { contradictions, questions } = chained(...back);
    expect(contradictions).toEqual([]);
    expect(questions).toContainEqual(expect.objectContaining({ is: "owner-returns" }));
    const file = fileOf("ceramics", ...back);
    const undated = { ...file, events: file.events.map((event) => ({ ...event, date: null })) };
    expect(words(check(undated).contradictions)).toEqual([["owner-loop", 1, 2]]);
  });
});

describe("what is asked of a chain", () => {
  const letter: Typed = ["document", { id: id(50), kind: "letter", title: "A letter", when: "1940" }];

  it("a date and a document for every step", () => {
    const { questions } = chained(
      letter,
      step(1, "given", "", "Ada", "", {}),
      step(2, "moved", "", "Ada", "1939", { documents: id(50) }),
    );
    expect(words(questions)).toEqual([
      ["undated", 1],
      ["without-document", 1],
    ]);
  });

  it.each([
    ["1921", []],
    ["1920", [["told-later", 1]]],
  ])("why a letter of 1940 tells of %s", (when, expected) => {
    const { questions } = chained(letter, step(1, "given", "", "Ada", when, { documents: id(50) }));
    expect(words(questions)).toEqual(expected);
  });
});
