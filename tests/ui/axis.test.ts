import { expect, it } from "vitest";
import type { Interval } from "#core/dates/interval";
import { parseInterval } from "#core/dates/parse";
import { at, axisOver } from "../../app/_ui/time/axis.ts";

function period(edtf: string): Interval {
  const parsed = parseInterval(edtf);
  if (!parsed.ok) throw new Error(`${edtf} was not read: ${parsed.error.rule}`);
  return parsed.value;
}

it("holds every known year, with room at both ends, on round years", () => {
  const axis = axisOver([period("1871/1890"), period("1902/.."), null]);
  expect(axis?.from).toBeLessThan(1871);
  expect(axis?.to).toBeGreaterThan(1902);
  expect(axis?.ticks.every((year) => year % 5 === 0)).toBe(true);
  expect(axis?.ticks[0]).toBe(axis?.from);
  expect(axis?.ticks.at(-1)).toBe(axis?.to);
});

it("is none when no year is known", () => {
  expect(axisOver([null])).toBeNull();
});

it("lays years from left to right, in percent, and keeps those beyond it at its ends", () => {
  const axis = { from: 1800, to: 1900, ticks: [1800, 1900] };
  expect([1700, 1800, 1850, 1900, 2000].map((year) => at(year, axis))).toEqual([0, 0, 50, 100, 100]);
});
