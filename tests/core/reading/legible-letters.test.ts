import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareLetters, differences } from "#core/reading/compare-letters";
import { type LegibleLetters, parseLegibleLetters } from "#core/reading/legible-letters";
import { plainLetters } from "#core/reading/plain-letters";

const read = (typed: string): LegibleLetters => {
  const parsed = parseLegibleLetters(typed);
  if (!parsed.ok || !parsed.value) throw new Error(`${typed} can't be read.`);
  return parsed.value;
};

describe("letters that can be read", () => {
  it.each([
    ["HALLOWDENE", "hallowdene"],
    ["T·BODKIN", "tbodkin"],
    ["t. bodkin", "tbodkin"],
    ["Dörte Voß", "dortevoss"],
    ["ÆGIR & Łodz", "aegir&lodz"],
    ["HARL / & SON", "harl&son"],
    ["BOD?IN", "bod?in"],
    ["*SON", "*son"],
    ["G. [...] / HALLOW[…]", "g*hallow*"],
    ["H… & SON", "h*&son"],
    ["A**B", "a*b"],
    ["No. 1440", "no1440"],
    ["ＢＯＤ？ＩＮ", "bod?in"],
    ["ΘΕΟΔΩΡΟΣ", "θεοδωροσ"],
  ])("“%s” is %s", (typed, pattern) => expect(read(typed).pattern).toBe(pattern));

  it("counts the letters that were read, not the ones that were not", () => {
    expect(read("B?D*IN").legible).toBe(4);
  });

  it("takes nothing typed for nothing known", () => {
    expect(parseLegibleLetters("  ")).toEqual({ ok: true, value: null });
  });

  it.each(["?", "* ?", "[...]", "· / ·", "…"])("refuses “%s”, in which nothing is legible", (typed) => {
    expect(parseLegibleLetters(typed)).toEqual({
      ok: false,
      error: { field: "letters", rule: "letters-legible", received: typed },
    });
  });

  it("refuses more than a mark can hold, and says how much that is", () => {
    const result = parseLegibleLetters("a".repeat(201));
    expect(result).toMatchObject({ ok: false, error: { rule: "letters-length", params: { longest: 200 } } });
  });

  it("does not take a star or a question mark of a transcription for a gap", () => {
    expect(plainLetters("WHO? * ME", { wildcards: false })).toBe("whome");
    expect(plainLetters("WHO [?] ME [*]", { wildcards: false })).toBe("who*me*");
  });
});

describe("a reading beside a transcription", () => {
  it.each([
    ["T·BODKIN", "T·BODKIN", "whole", 0],
    ["t bodkin", "T·BODKIN", "whole", 0],
    ["BOD?IN", "T·BODKIN", "part", 0],
    ["?BOD?IN", "T·BODKIN", "whole", 0],
    ["*KIN", "T·BODKIN", "part", 0],
    ["BODKIN & S*", "BODKIN & SARROW / CARNHYTHE", "part", 0],
    ["BODKIN & S* CARNHYTHE", "BODKIN & SARROW / CARNHYTHE", "part", 0],
    ["T·BODKLN", "T·BODKIN", "near", 1],
    ["BODIN", "T·BODKIN", "near", 1],
    ["VOSS", "T·BODKIN", "not", 3],
    ["HALLOWDENE", "HALLOW[...]", "part", 0],
    ["MARL HALLOWDENE", "G. MARL / [...]DENE", "part", 0],
    ["S&K", "S K", "not", 1],
  ] as const)("“%s” with “%s”: %s", (typed, words, degree, least) => {
    expect(compareLetters(read(typed), words)).toEqual({ degree, differences: least });
  });

  it("says nothing when the entry transcribes no words", () => {
    expect(compareLetters(read("VOSS"), "")).toBeNull();
    expect(compareLetters(read("VOSS"), "[...]")).toBeNull();
  });

  const word = fc.string({ unit: fc.constantFrom(..."abcdef"), minLength: 1, maxLength: 12 });

  it("agrees with every part of a wording, with any letters made unreadable", () => {
    fc.assert(
      fc.property(word, word, word, fc.nat(), (before, middle, after, at) => {
        const place = at % middle.length;
        const worn = `${middle.slice(0, place)}?${middle.slice(place + 1)}`;
        expect(differences(worn, before + middle + after, "part")).toBe(0);
        expect(differences(`*${worn}*`, before + middle + after, "whole")).toBe(0);
      }),
    );
  });

  it("counts no more differences in a part than in the whole, and never more than there are letters", () => {
    fc.assert(
      fc.property(word, word, (a, b) => {
        const [part, whole] = [differences(a, b, "part"), differences(a, b, "whole")];
        expect(part).toBeLessThanOrEqual(whole);
        expect(part).toBeLessThanOrEqual(a.length);
        expect(whole).toBe(differences(b, a, "whole"));
      }),
    );
  });

  // Worked examples of the distance without wildcards: Wagner and Fischer, "The String-to-String Correction Problem",
  // Journal of the ACM 21 (1974), define it; "kitten" to "sitting" by 3 is the textbook case.
  it.each([
    ["kitten", "sitting", 3],
    ["saturday", "sunday", 3],
    ["abc", "abc", 0],
  ])("needs for %s and %s %d changes", (a, b, least) => expect(differences(a, b, "whole")).toBe(least));
});
