import { describe, expect, it } from "vitest";
import type { Citation } from "#core/entries/citation";
import { computePeriod } from "#core/entries/computed-period";
import { contentOf, statedContent } from "#core/entries/content-of";
import { citationPart, readCitation } from "#core/entries/read-citation";
import type { DatedSaying } from "#core/entries/vocabulary";
import { period } from "../dating/evidence.ts";

const SOURCE = {
  kind: "book",
  author: "M. Oldacre",
  title: "Touches of the Harbour Towns",
  year: "1931",
  place: "p. 22",
  address: "",
  seen: "",
} as const;

function source(title: string, edtf: string, says: DatedSaying = "in use"): Citation {
  return { ...SOURCE, kind: "dated object", title, dated: { edtf, says } };
}

function read(parts: Parameters<typeof readCitation>[0]) {
  const refused: string[] = [];
  const citation = readCitation(parts, (part, rule, value) => refused.push(`${part} ${rule} ${value}`));
  return { citation, refused };
}

describe("a citation", () => {
  it("that dates nothing is what it was before citations could: its hash stays", () => {
    const { citation, refused } = read(SOURCE);
    expect(refused).toEqual([]);
    expect(citation).toStrictEqual(SOURCE);
    expect(Object.keys(citation)).not.toContain("dated");
    const content = contentOf({ citations: [citation] });
    expect(JSON.stringify(statedContent(content).citations)).toBe(JSON.stringify([SOURCE]));
  });

  it("says when, as people write it, and keeps EDTF", () => {
    const { citation, refused } = read({ ...SOURCE, dated: "about 1905", says: "in use" });
    expect(refused).toEqual([]);
    expect(citation.dated).toEqual({ edtf: "1905~", says: "in use" });
    expect(citationPart(citation, "dated")).toBe("1905~");
    expect(citationPart(citation, "says")).toBe("in use");
  });

  it.each([
    [{ ...SOURCE, kind: "dated object" }, ["dated required "]],
    [{ ...SOURCE, says: "in use" }, ["dated required "]],
    [{ ...SOURCE, dated: "1905" }, ["says one-of "]],
    [{ ...SOURCE, dated: "when she was young", says: "in use" }, ["dated date when she was young"]],
    [{ ...SOURCE, dated: "1905", says: "perhaps" }, ["says one-of perhaps"]],
  ])("refuses %j", (parts, refusals) => {
    expect(read(parts).refused).toEqual(refusals);
  });
});

describe("a period of use computed from dated pieces", () => {
  it("is none where nothing is dated", () => {
    expect(computePeriod([SOURCE], period("1900/1910"))).toBeNull();
  });

  it("reaches from the first year that shows the mark in use to the last, and is bounded by what rules use out", () => {
    const computed = computePeriod(
      [
        SOURCE,
        source("Tankard with a wedding date", "1908"),
        source("Ewer of a launch", "1904-06-11"),
        source("Plate of a jubilee", "1921"),
        source("Register of touches", "1903", "not before"),
        source("Sale of the tools", "1927-10", "not after"),
      ],
      period("1902/1925"),
    );
    expect(computed).toMatchObject({
      pieces: 5,
      shown: { edtf: "1904/1921" },
      notBefore: 1903,
      notAfter: 1927,
    });
    expect(computed?.contradictions).toEqual([]);
    expect(computed?.disagreements).toMatchObject([
      { is: "begins too early", citation: { title: "Register of touches" } },
    ]);
  });

  it("disagrees with a stated period that ends before a use, or begins after one, by name", () => {
    const stated = period("1905/1914");
    const computed = computePeriod(
      [source("Cup", "1899"), source("Jug", "1920"), source("Bowl", "1907")],
      stated,
    );
    expect(computed?.disagreements).toMatchObject([
      { is: "used before", citation: { title: "Cup" } },
      { is: "used after", citation: { title: "Jug" } },
    ]);
  });

  it("allows what about spans: five years", () => {
    const uses = [source("Cup", "1901"), source("Jug", "1918")];
    expect(computePeriod(uses, period("1905~/1914~"))?.disagreements).toEqual([]);
    expect(computePeriod(uses, period("1905/1914"))?.disagreements).toHaveLength(2);
  });

  it("disagrees with an open end that a piece closes, and not with one that nobody knows", () => {
    const closed = [source("Sale of the tools", "1927", "not after")];
    expect(computePeriod(closed, period("1902/.."))?.disagreements).toMatchObject([{ is: "ends too late" }]);
    expect(computePeriod(closed, period("1902/"))?.disagreements).toEqual([]);
    expect(computePeriod(closed, null)?.disagreements).toEqual([]);
  });

  it("names pieces of which one shows a use that the other rules out, and makes no midpoint of them", () => {
    const computed = computePeriod(
      [source("Cup", "1899"), source("Register", "1903", "not before")],
      period("1890/1910"),
    );
    expect(computed?.contradictions.map((pair) => pair.map(({ title }) => title))).toEqual([
      ["Cup", "Register"],
    ]);
    expect(computed).toMatchObject({ shown: { edtf: "1899" }, notBefore: 1903 });
  });
});
