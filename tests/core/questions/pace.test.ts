import { expect, it } from "vitest";
import { PACE_MS, PACES, tooOften } from "#core/questions/pace";

const now = 10 * PACE_MS;
const times = (count: number, at = now) => Array.from({ length: count }, () => at);

it("lets a client do it as often as the pace says, and says how long to wait after that", () => {
  const { each } = PACES.publish;
  expect(tooOften("publish", times(each - 1), times(each - 1), now)).toBeNull();
  const early = now - PACE_MS + 90_000;
  expect(tooOften("publish", [early, ...times(each - 1)], times(each), now)).toMatchObject({
    rule: "too-often",
    received: String(each),
    params: { most: each, minutes: 2 },
  });
});

it("forgets what is an hour ago", () => {
  const { each } = PACES.propose;
  expect(tooOften("propose", times(each, now - PACE_MS), times(each, now - PACE_MS), now)).toBeNull();
});

it("stops everybody when all together do it too often", () => {
  expect(tooOften("propose", [], times(PACES.propose.all), now)).toMatchObject({
    params: { most: PACES.propose.all, minutes: 60 },
  });
});
