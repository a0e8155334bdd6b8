import { describe, expect, it } from "vitest";
import { coverage, SHARES } from "../../../scripts/check-dating/coverage.ts";
import { timeThirty } from "../../../scripts/check-dating/heavy.ts";

describe("2,000 objects of known years, their evidence drawn as the models say", () => {
  const { held, objects, wholeYears, conflicts } = coverage(2000, 1);
  const inHundred = (count: number) => (100 * count) / objects;

  it("have the year within the 95 per cent spans 93 to 97 times in 100", () => {
    expect(inHundred(held[95])).toBeGreaterThan(93);
    expect(inHundred(held[95])).toBeLessThan(97);
  });

  it("have it within the 80 per cent spans 78 to 82 times", () => {
    expect(inHundred(held[80])).toBeGreaterThan(78);
    expect(inHundred(held[80])).toBeLessThan(82);
  });

  it("have it within the 50 per cent spans 47 to 53 times", () => {
    expect(inHundred(held[50])).toBeGreaterThan(47);
    expect(inHundred(held[50])).toBeLessThan(53);
  });

  it("are held by spans of whole years as often as these say, within 3 in 100", () => {
    for (const share of SHARES)
      expect(Math.abs(inHundred(wholeYears[share].held) - 100 * wholeYears[share].say)).toBeLessThan(3);
  });

  it("are a hard test: for many of them the evidence contradicts itself", () => {
    expect(inHundred(conflicts)).toBeGreaterThan(10);
  });
});

it("30 pieces over 600 years take less than 5 ms", () => {
  // The quickest of many: what the program needs, whatever else the machine is doing.
  expect(timeThirty(60)[0]).toBeLessThan(5);
}, 60_000);
