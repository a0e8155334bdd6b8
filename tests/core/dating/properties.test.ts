import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { findConflicts } from "#core/dating/conflicts";
import { dayOrder } from "#core/dating/day";
import { estimate } from "#core/dating/estimate";
import { DATED_EVENTS, EVIDENCE_KINDS, type Evidence } from "#core/dating/evidence";
import { period, piece } from "./evidence.ts";

// Hundreds of examples each, on whatever else the machine is doing.
vi.setConfig({ testTimeout: 60_000 });

const PRIOR = { kind: "widest", thisYear: 2026 } as const;

const ends = fc.tuple(fc.integer({ min: 1700, max: 1980 }), fc.integer({ min: 0, max: 60 }));
const edtf = fc
  .tuple(ends, fc.constantFrom("both", "both", "about", "from", "until", "month"))
  .map(([[year, length], form]) => {
    if (form === "from") return `${year}/..`;
    if (form === "until") return `../${year}`;
    if (form === "month") return `${year}-03/${year + length}-08`;
    return form === "about" ? `${year}~/${year + length}~` : `${year}/${year + length}`;
  });

function pieces(min: number, max: number) {
  const one = fc.record({
    kind: fc.constantFrom(...EVIDENCE_KINDS),
    event: fc.constantFrom(...DATED_EVENTS),
    edtf,
    or: fc.option(edtf, { nil: null, freq: 5 }),
    reliability: fc.double({ min: 0.5, max: 0.999, noNaN: true }),
    group: fc.constantFrom(null, null, null, "label", "letter"),
  });
  return fc.array(one, { minLength: min, maxLength: max }).map((all) =>
    all.map(
      (each, i): Evidence =>
        piece(`p${i}`, [each.kind, each.event], each.edtf, each.reliability, {
          or: each.or === null ? [] : [each.or],
          group: each.group,
        }),
    ),
  );
}

describe("an estimate", () => {
  it("does not depend on the order of the evidence", () => {
    const shuffled = pieces(1, 8).chain((all) =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length })),
    );
    fc.assert(
      fc.property(shuffled, ([all, other]) => {
        expect(estimate(other, PRIOR)).toEqual(estimate(all, PRIOR));
      }),
      { numRuns: 150 },
    );
  });

  it("is not changed by a piece that is fully unreliable", () => {
    fc.assert(
      fc.property(pieces(0, 6), pieces(1, 1), (all, [other]) => {
        if (!other) return;
        const useless = { ...other, id: "useless", reliability: 0 };
        expect(estimate([useless, ...all], PRIOR)).toEqual(estimate(all, PRIOR));
      }),
      { numRuns: 150 },
    );
  });

  it("is the same twice, and changes nothing that it is given", () => {
    fc.assert(
      fc.property(pieces(0, 8), (all) => {
        const before = JSON.stringify(all);
        expect(estimate(all, PRIOR)).toEqual(estimate(structuredClone(all), PRIOR));
        expect(JSON.stringify(all)).toBe(before);
      }),
      { numRuns: 100 },
    );
  });

  it("is a distribution, whose spans hold what they say and lie within each other", () => {
    fc.assert(
      fc.property(pieces(0, 8), (all) => {
        const { posterior, shortest, grid } = estimate(all, PRIOR);
        expect(posterior.length).toBe(grid.to - grid.from + 1);
        expect(posterior.every((p) => p >= 0)).toBe(true);
        expect(posterior.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
        for (const share of [50, 80, 95] as const)
          expect(shortest[share].mass).toBeGreaterThan(share / 100 - 1e-6);
        const yearsOf = (share: 50 | 80 | 95) =>
          shortest[share].ranges.reduce((sum, { from, to }) => sum + to - from + 1, 0);
        expect(yearsOf(50)).toBeLessThanOrEqual(yearsOf(80));
        expect(yearsOf(80)).toBeLessThanOrEqual(yearsOf(95));
      }),
      { numRuns: 200 },
    );
  });
});

describe("hard bounds", () => {
  it("are never wider once a window is narrower", () => {
    const narrowing = fc.tuple(
      pieces(1, 6),
      fc.nat(),
      ends,
      fc.integer({ min: 0, max: 30 }),
      fc.integer({ min: 0, max: 30 }),
    );
    let compared = 0;
    fc.assert(
      fc.property(narrowing, ([all, which, [year, length], left, right]) => {
        const one = all[which % all.length];
        if (!one) return;
        const { alternatives: _, ...rest } = one;
        const others = all.filter((other) => other !== one);
        // A state that lasted is taken by its beginning: one that begins later is not narrower, it claims less.
        const from = one.event === "owned" ? year : year + Math.min(left, length);
        const to = Math.max(from, year + length - right);
        const wide = estimate([...others, { ...rest, interval: period(`${year}/${year + length}`) }], PRIOR);
        const narrow = estimate([...others, { ...rest, interval: period(`${from}/${to}`) }], PRIOR);
        for (const set of wide.conflicts)
          expect(narrow.conflicts.some((smaller) => smaller.every((id) => set.includes(id)))).toBe(true);
        if (narrow.conflicts.length > 0) return;
        compared++;
        if (wide.notBefore)
          expect(dayOrder(narrow.notBefore?.day ?? "-9999-01-01")).toBeGreaterThanOrEqual(
            dayOrder(wide.notBefore.day),
          );
        if (wide.notAfter)
          expect(dayOrder(narrow.notAfter?.day ?? "9999-01-01")).toBeLessThanOrEqual(
            dayOrder(wide.notAfter.day),
          );
      }),
      { numRuns: 600 },
    );
    expect(compared).toBeGreaterThan(50);
  });
});

describe("conflicts", () => {
  type Years = readonly (readonly [number, number])[];
  const span = fc
    .tuple(fc.integer({ min: 1900, max: 1930 }), fc.integer({ min: 0, max: 12 }))
    .map(([from, length]) => [from, from + length] as const);
  const certain = fc.array(fc.array(span, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 7 });

  /** Every subset, every year: which sets leave no year, and no smaller one of theirs does. */
  function byForce(all: readonly Years[]): readonly string[] {
    const empty = Array.from({ length: 2 ** all.length }, (_, mask) => mask).filter((mask) => {
      const chosen = all.filter((__, i) => (mask >> i) & 1);
      const years = Array.from({ length: 60 }, (__, i) => 1895 + i);
      return !years.some((year) => chosen.every((spans) => spans.some(([a, b]) => a <= year && year <= b)));
    });
    return empty
      .filter((mask) => !empty.some((other) => other !== mask && (other & mask) === other))
      .map((mask) => all.flatMap((_, i) => ((mask >> i) & 1 ? [`p${i}`] : [])))
      .filter((set) => set.length <= 4)
      .map(String)
      .sort();
  }

  it("are exactly the smallest sets that leave no year", () => {
    let several = 0;
    fc.assert(
      fc.property(certain, (all) => {
        const evidence = all.map((spans, i) => {
          const [first = "", ...or] = spans.map(([from, to]) => `${from}/${to}`);
          return piece(`p${i}`, ["other", "made"], first, 0.999, { or });
        });
        const found = findConflicts(evidence);
        if (found.some((set) => set.length > 2)) several++;
        expect(found.map(String).sort()).toEqual(byForce(all));
      }),
      { numRuns: 800 },
    );
    expect(several).toBeGreaterThan(20);
  });

  it("are never kept quiet between two certain pieces that share no day", () => {
    fc.assert(
      fc.property(pieces(0, 6), ends, fc.integer({ min: 1, max: 40 }), (others, [year, length], gap) => {
        const sooner = piece("sooner", ["other", "made"], `${year}/${year + length}`, 0.999);
        const later = piece("later", ["other", "made"], `${year + length + gap}/..`, 0.999);
        const found = estimate([sooner, ...others, later], PRIOR);
        expect(found.conflicts).toContainEqual(["later", "sooner"]);
        expect(found).toMatchObject({ notBefore: null, notAfter: null });
      }),
      { numRuns: 200 },
    );
  });
});
