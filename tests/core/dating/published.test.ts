import { describe, expect, it } from "vitest";
import { estimate } from "#core/dating/estimate";
import intersections from "../../fixtures/dating/intersections.json" with { type: "json" };
import { chance, piece } from "./evidence.ts";

/** A year or none, as the fixture writes the ends of a window. */
type End = string | number | null | undefined;

function evidenceOf(rows: readonly (readonly End[])[]) {
  return rows.flatMap(([what, from, to], i) => {
    if (from === null && to === null) return [];
    return [piece(`${i + 1} ${what}`, ["wording", "made"], `${from ?? ".."}/${to ?? ".."}`, 0.95)];
  });
}

describe("published windows of label facts", () => {
  it.each(intersections.cases.filter(({ result }) => Array.isArray(result)))(
    "leave $result",
    ({ evidence, result }) => {
      const found = estimate(evidenceOf(evidence), { kind: "widest", thisYear: 2026 });
      expect(found.notBefore?.day).toBe(`${result[0]}-01-01`);
      expect(found.notAfter?.day).toBe(`${result[1]}-12-31`);
      expect(found.conflicts).toEqual([]);
    },
  );

  it("that contradict each other leave a named conflict, no bounds and no midpoint", () => {
    const contradiction = intersections.cases.find(({ result }) => !Array.isArray(result));
    const found = estimate(evidenceOf(contradiction?.evidence ?? []), { kind: "widest", thisYear: 2026 });
    expect(found.conflicts).toEqual([["1 Nippon (US export)", "2 ZIP code"]]);
    expect(found).toMatchObject({ notBefore: null, notAfter: null, median: null });
    // Half way between the two, where both are false, is less likely than either.
    expect(chance(found, 1937, 1946)).toBeLessThan(chance(found, 1905, 1914) / 5);
    expect(chance(found, 1937, 1946)).toBeLessThan(chance(found, 1990, 1999) / 5);
  });
});

describe("the published trap of dependent facts", () => {
  // At even odds, a fact four times as likely if true makes 0.8; two of one label must not make 0.94 of it.
  const prior = { kind: "years", from: 1900, to: 1919 } as const;
  const fact = (id: string, group: string | null) =>
    piece(id, ["other", "made"], "1910/1919", 0.6, { group });

  it("is kept out: counted once they make 0.8", () => {
    // r * 20/10 + 1 - r against 1 - r is 4 to 1 at r = 0.6.
    expect(chance(estimate([fact("a", null)], prior), 1910, 1919)).toBeCloseTo(0.8, 12);
    expect(chance(estimate([fact("a", "label"), fact("b", "label")], prior), 1910, 1919)).toBeCloseTo(
      0.8,
      12,
    );
    expect(chance(estimate([fact("a", null), fact("b", null)], prior), 1910, 1919)).toBeCloseTo(16 / 17, 12);
  });
});
