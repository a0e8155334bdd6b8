import { expect, it } from "vitest";
import { spreadPoints } from "#core/photographs/spread-points";

const at = (x: number, y: number) => ({ query: [x + 1, y + 1] as const, reference: [x, y] as const });

it("takes the points that lie farthest apart, in the order of reading", () => {
  const crowd = Array.from({ length: 40 }, (_, i) => at(50 + (i % 5), 50 + (i % 7)));
  const corners = [at(0, 0), at(100, 0), at(0, 100), at(100, 100)];
  expect(spreadPoints([...crowd, ...corners], 5)).toEqual([
    at(0, 0),
    at(100, 0),
    at(50, 50),
    at(0, 100),
    at(100, 100),
  ]);
});

it("takes no place twice, and no more than there are", () => {
  expect(spreadPoints([at(1, 1), at(1, 1), at(9, 1)], 5)).toEqual([at(1, 1), at(9, 1)]);
  expect(spreadPoints([], 5)).toEqual([]);
});
