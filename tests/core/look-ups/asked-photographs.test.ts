import { expect, it } from "vitest";
import {
  checkPhotographCount,
  MOST_PHOTOGRAPHS,
  numberMarks,
  parseMarkNumber,
} from "#core/look-ups/asked-photographs";

it("holds one to six photographs, and names the rule and the number otherwise", () => {
  expect(checkPhotographCount(MOST_PHOTOGRAPHS)).toEqual({ ok: true, value: 6 });
  expect(checkPhotographCount(7)).toEqual({
    ok: false,
    error: { field: "photograph", rule: "photographs-most", received: "7", params: { most: 6 } },
  });
  expect(checkPhotographCount(0)).toMatchObject({ ok: false, error: { rule: "image-missing" } });
});

it.each(["0", "7", "-1", "1.5", "one", "11"])("takes %s for no mark's number", (typed) => {
  expect(parseMarkNumber(typed)).toMatchObject({
    ok: false,
    error: { field: "mark", rule: "whole-number", received: typed, params: { from: 1, to: 6 } },
  });
});

it("takes nothing typed for the first mark", () => {
  expect(parseMarkNumber(" ")).toEqual({ ok: true, value: 1 });
  expect(parseMarkNumber(" 3 ")).toEqual({ ok: true, value: 3 });
});

it("numbers marks in the order of their photographs, without gaps", () => {
  const marks = (...numbers: number[]) => numberMarks(numbers.map((mark) => ({ mark }))).map((m) => m.mark);
  expect(marks(4, 2, 4, 6)).toEqual([1, 2, 1, 3]);
  expect(marks(1, 1)).toEqual([1, 1]);
});
