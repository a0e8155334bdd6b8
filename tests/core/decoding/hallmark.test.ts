import { describe, expect, it } from "vitest";
import { decodeHallmark, type HallmarkInput } from "#core/decoding/hallmark";

function read(input: HallmarkInput) {
  const decoded = decodeHallmark(input);
  if (!decoded.ok) throw new Error(`refused by ${decoded.error.rule}`);
  const { statements, alternatives, notes } = decoded.value;
  return {
    sure: statements.map(({ edtf }) => edtf),
    either: alternatives.map(({ edtf }) => edtf),
    notes: notes.map(({ is }) => is),
    statements,
  };
}
const refused = (input: HallmarkInput) => {
  const decoded = decodeHallmark(input);
  return decoded.ok ? null : { field: decoded.error.field, rule: decoded.error.rule };
};

describe("a date letter", () => {
  it.each([
    ["London", "a", "Roman small", "2000-01-01/2000-12-31", "1736-05-29/1737-05-28"],
    ["Birmingham", "k", "black letter small", "1884-07-01/1885-06-30", null],
    ["Sheffield", "G", "black letter capitals", "1974-07-01/1974-12-31", null],
    ["London", "t", "italic small", "1974-05-29/1974-12-31", null],
    ["London", "a", "court hand", "1697-03-27/1697-05-28", null],
    ["London", "b", "court hand", "1697-05-29/1698-05-28", "1639-05-19/1640-05-18"],
    ["London", "B", "black letter capitals", "1659-05-19/1660-05-28", null],
    ["Edinburgh", "u", "Roman small", "2019-01-01/2019-12-31", null],
  ])("of %s, %s in %s, spans the change-over", (office, letter, style, span, other) => {
    const { sure, either } = read({ office, letter, style });
    const all = [...sure, ...either];
    expect(all).toContain(span);
    if (other !== null) expect(all).toContain(other);
  });

  it("skips letters as the office did: 2008 is j and 2010 is l", () => {
    const year = (letter: string) =>
      read({ office: "Birmingham", letter, style: "Roman small" }).either.at(-1);
    expect(year("j")).toBe("2008-01-01/2008-12-31");
    expect(year("l")).toBe("2010-01-01/2010-12-31");
  });

  it("without its style gives every cycle, those of the case that was typed first", () => {
    const { sure, either, notes } = read({ office: "Birmingham", letter: "k" });
    expect(sure).toEqual([]);
    expect(either).toHaveLength(10);
    expect(either[0]).toBe("1808-07-01/1809-06-30");
    expect(either.map((edtf) => edtf.slice(0, 4)).toSorted()).toEqual(
      ["1782", "1808", "1833", "1859", "1884", "1909", "1934", "1959", "1984", "2009"].toSorted(),
    );
    expect(notes).toEqual(expect.arrayContaining(["without-style", "no-shields"]));
  });

  it("without its office gives every office's cycles", () => {
    const { either } = read({ letter: "A", style: "italic capitals" });
    expect(either).toEqual(Array.from({ length: 4 }, () => "1975-01-01/1975-12-31"));
  });

  it("is narrowed by the other marks, and says so", () => {
    const { either, sure, notes } = read({ office: "London", letter: "f", others: ["duty"] });
    expect(either.map((edtf) => edtf.slice(0, 4))).toEqual(["1821", "1861", "1801", "1841", "1881"]);
    expect(sure).toEqual(["1784-12-01/1890-04-30"]);
    expect(notes).toContain("narrowed");
  });

  it("is not silenced by a mark that contradicts it", () => {
    const { either, sure, notes } = read({
      office: "Birmingham",
      letter: "q",
      style: "italic capitals",
      others: ["duty"],
    });
    expect([...sure, ...either]).toContain("1990-01-01/1990-12-31");
    expect(sure).toContain("1784-12-01/1890-04-30");
    expect(notes).toContain("contradiction");
  });

  it.each([
    [{}, "letter", "hallmark-empty"],
    [{ letter: "ab" }, "letter", "one-letter"],
    [{ letter: "5" }, "letter", "one-letter"],
    [{ office: "London", letter: "j", style: "black letter small" }, "letter", "letter-unknown"],
    [{ office: "Birmingham", letter: "a", style: "court hand" }, "style", "style-unknown"],
    [{ office: "Atlantis", letter: "a" }, "office", "one-of"],
    [{ letter: "a", style: "runes" }, "style", "one-of"],
    [{ standard: "tin-100" }, "standard", "one-of"],
    [{ others: ["unicorn"] }, "others", "one-of"],
  ])("refuses %j", (input, field, rule) => {
    expect(refused(input)).toEqual({ field, rule });
  });
});

describe("the other marks", () => {
  it("give fineness, and a date where there is one", () => {
    const decoded = decodeHallmark({ standard: "silver-800" });
    expect(decoded).toMatchObject({
      ok: true,
      value: {
        statements: [{ edtf: "1999-01-01/..", basis: "published" }],
        notes: expect.arrayContaining([
          { is: "fineness", params: { mark: "800", metal: "silver", fineness: "800" } },
          { is: "exempt", params: { metal: "silver", grams: 7.78 } },
        ]),
      },
    });
  });

  it("of an office that closed are not after", () => {
    const { sure, notes } = read({ office: "Chester", letter: "a" });
    expect(sure).toEqual(["../1962"]);
    expect(notes).toContain("no-letters");
  });
});
