import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Calibration, parseCalibration } from "#core/similarity/calibration";
import { chancesOf, type Weighed } from "#core/similarity/chances";

const root = join(import.meta.dirname, "..", "..", "..");
const reference = JSON.parse(
  readFileSync(join(root, "tests", "fixtures", "calibration", "reference.json"), "utf8"),
).chances;
const shipped = parseCalibration(
  JSON.parse(readFileSync(join(root, "ml", "model", "calibration.json"), "utf8")),
);
if (!shipped.ok) throw new Error(JSON.stringify(shipped.error));
const calibration: Calibration = shipped.value;

const entry = (name: string, similarity: number | null, more: Partial<Weighed> = {}): Weighed => ({
  ...{ entry: name, similarity, photographs: 1, pairScore: null, evidence: 0, lettersAgree: false },
  ...more,
});

/** Entries as look-ups meet them: some near, some far, some with things known besides, some without photographs. */
const drawn = fc.uniqueArray(
  fc.record({
    entry: fc.integer({ min: 0, max: 60 }).map((n) => `e${n}`),
    similarity: fc.option(fc.double({ min: 0.3, max: 1, noNaN: true }), { freq: 8 }),
    photographs: fc.integer({ min: 1, max: 8 }),
    pairScore: fc.constant(null),
    evidence: fc.constantFrom(0, 0, 0, 1, 4, -3),
    lettersAgree: fc.boolean(),
  }),
  { selector: (each) => each.entry, minLength: 1, maxLength: 40 },
);
const chances = (weighed: readonly Weighed[], entries = 300) => chancesOf(weighed, entries, calibration);
const of = (weighed: readonly Weighed[], name: string, entries = 300) =>
  chances(weighed, entries).of.get(name) ?? Number.NaN;

describe("the chances of entries, and of none", () => {
  it.each(["plain", "reranked"] as const)(
    "agree with SciPy's softmax over the same log-odds, %s",
    (which) => {
      const { curve, entries, similarity, photographs, pairScore, evidence } = reference;
      const weighed = similarity.map((each: number, i: number) =>
        entry(`e${i}`, each, {
          photographs: photographs[i],
          evidence: evidence[i],
          pairScore: which === "plain" ? null : pairScore[i],
        }),
      );
      const found = chancesOf(weighed, entries, { plain: curve, reranked: curve });
      expect(found.none).toBeCloseTo(reference[which][0], 10);
      for (const [i, { entry: name }] of weighed.entries())
        expect(found.of.get(name)).toBeCloseTo(reference[which][i + 1], 10);
    },
  );

  it("sum to 1, and none is below 0", () => {
    fc.assert(
      fc.property(drawn, fc.integer({ min: 1, max: 100_000 }), (weighed, entries) => {
        const { of, none } = chances(weighed, entries);
        const all = [none, ...of.values()];
        expect(all.every((each) => each >= 0 && each <= 1)).toBe(true);
        expect(all.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 9);
      }),
    );
  });

  it("do not depend on the order of the entries", () => {
    fc.assert(
      fc.property(drawn, fc.infiniteStream(fc.integer()), (weighed, keys) => {
        const shuffled = weighed
          .map((each) => ({ each, key: keys.next().value ?? 0 }))
          .sort((x, y) => x.key - y.key)
          .map(({ each }) => each);
        const [one, other] = [chances(weighed), chances(shuffled)];
        expect(other.none).toBe(one.none);
        for (const [name, each] of one.of) expect(other.of.get(name)).toBe(each);
      }),
    );
  });

  it("a nearer photograph of the first entry never makes it less likely", () => {
    fc.assert(
      fc.property(drawn, fc.double({ min: 0, max: 0.2, noNaN: true }), (others, nearer) => {
        const first = entry("first", 0.8);
        const rest = others.filter(({ similarity }) => (similarity ?? 0) < 0.8);
        const before = of([first, ...rest], "first");
        expect(of([{ ...first, similarity: 0.8 + nearer }, ...rest], "first")).toBeGreaterThanOrEqual(
          before - 1e-12,
        );
      }),
    );
  });

  it("more that is known for an entry makes it likelier, and every other and none less likely", () => {
    fc.assert(
      fc.property(drawn, fc.double({ min: 0.1, max: 4, noNaN: true }), (weighed, more) => {
        const [first, ...rest] = weighed;
        if (!first) return;
        const before = chances(weighed);
        const after = chances([{ ...first, evidence: first.evidence + more }, ...rest]);
        const at = (of: ReadonlyMap<string, number>) => of.get(first.entry) ?? Number.NaN;
        expect(at(after.of)).toBeGreaterThanOrEqual(at(before.of));
        expect(after.none).toBeLessThanOrEqual(before.none);
      }),
    );
  });

  it("letters that agree never make an entry less likely", () => {
    fc.assert(
      fc.property(drawn, (weighed) => {
        const [first, ...rest] = weighed;
        if (!first) return;
        const before = of([{ ...first, lettersAgree: false }, ...rest], first.entry);
        expect(of([{ ...first, lettersAgree: true }, ...rest], first.entry)).toBeGreaterThanOrEqual(
          before - 1e-12,
        );
      }),
    );
  });

  it("the more entries are searched, the likelier a nearness is chance", () => {
    const field = Array.from({ length: 30 }, (_, k) => entry(`far-${k}`, 0.7));
    const near = [entry("near", 0.88), ...field];
    expect(of(near, "near", 100)).toBeGreaterThan(of(near, "near", 10_000));
  });

  it("a twin as near takes half", () => {
    const field = Array.from({ length: 30 }, (_, k) => entry(`far-${k}`, 0.7));
    const alone = of([entry("a", 0.95), ...field], "a");
    const both = chances([entry("a", 0.95), entry("b", 0.95), ...field]);
    expect(alone).toBeGreaterThan(0.9);
    expect(both.of.get("a")).toBe(both.of.get("b"));
    expect(both.of.get("a")).toBeLessThan(0.5);
  });

  it("an entry without a photograph is likely when four letters agree, never very likely", () => {
    const field = Array.from({ length: 30 }, (_, k) => entry(`far-${k}`, 0.6));
    const known = of([entry("read", null, { evidence: 4, lettersAgree: true }), ...field], "read");
    expect(known).toBeGreaterThan(0.6);
    expect(known).toBeLessThan(0.9);
  });

  it("nothing to compare with: none, for certain", () => {
    expect(chances([])).toMatchObject({ none: 1 });
  });
});
