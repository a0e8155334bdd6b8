import { expect, it } from "vitest";
import { noneIsLikeliest, percentOf, surenessOf } from "#core/similarity/sureness";

it("words follow the numbers, each from its own on", () => {
  expect([1, 0.9, 0.899, 0.6, 0.599, 0.15, 0.149, 0].map(surenessOf)).toEqual([
    ...["very likely", "very likely", "likely", "likely"],
    ...["possible", "possible", null, null],
  ]);
});

it("none fits when no entry is likelier", () => {
  expect(noneIsLikeliest(0.4, [0.3, 0.2])).toBe(true);
  expect(noneIsLikeliest(0.4, [0.41, 0.1])).toBe(false);
  expect(noneIsLikeliest(1, [])).toBe(true);
});

it("a probability is shown in whole per cent, never as never or always", () => {
  expect([0, 0.004, 0.5, 0.924, 0.999].map(percentOf)).toEqual([1, 1, 50, 92, 99]);
});
