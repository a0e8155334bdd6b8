import { describe, expect, it } from "vitest";
import { parseInterval } from "#core/dates/parse";
import { absentStatement, checklistOf, featureStatement, pointOf } from "#core/object-files/checklist";
import { FAMILIES } from "#core/object-files/vocabulary";

const all = FAMILIES.flatMap((family) => checklistOf(family).points);

describe.each(FAMILIES)("the checklist of %s", (family) => {
  const { points, ...checklist } = checklistOf(family);

  it("is its own, and has eight points or more, each with what to look for and why", () => {
    expect(checklist.family).toBe(family);
    expect(points.length).toBeGreaterThanOrEqual(8);
    expect(points.filter(({ lookFor, why }) => lookFor.length < 10 || why.length < 10)).toEqual([]);
  });

  it("says where each point stands, and claims nothing in print", () => {
    expect(points.filter(({ source, basis }) => source === "" || basis === "published")).toEqual([]);
  });

  it("dates by rows that the tables have", () => {
    const named = points.flatMap(({ feature, options }) => [feature, ...options.map((each) => each.feature)]);
    expect(named.filter((row) => row !== undefined && featureStatement(row) === null)).toEqual([]);
  });

  it("asks for repairs or other later changes, and for wear", () => {
    const topics = points.map(({ tells }) => tells);
    expect(topics).toContain("repair");
    expect(topics).toContain("even wear");
  });
});

it("no two points have one id, nor two options of a point", () => {
  expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
  for (const { options } of all) expect(new Set(options.map(({ id }) => id)).size).toBe(options.length);
});

it("what is absent is said weakly, with a date that can be read", () => {
  const absent = all.flatMap((point) => absentStatement(point) ?? []);
  expect(absent.length).toBeGreaterThan(0);
  for (const { edtf, reliability } of absent) {
    expect(parseInterval(edtf).ok).toBe(true);
    expect(reliability).toBeLessThanOrEqual(0.6);
  }
});

it("finds a point of any family", () => {
  expect(pointOf("tin-repair")?.tells).toBe("repair");
  expect(pointOf("nothing")).toBeNull();
});
