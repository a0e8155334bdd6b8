import { expect, it } from "vitest";
import { refusalOf } from "../../app/_ui/look-up/refusal.ts";

it("tells of a rule and a field that the reference knows, with the numbers of the rule", () => {
  const params = { rule: "region-inside", field: "region", received: "x", "param-width": "400" };
  expect(refusalOf({ ...params, "param-height": "300", "param-note": "pay here" })).toEqual({
    rule: "region-inside",
    field: "region",
    received: "x",
    params: { width: 400, height: 300 },
  });
});

it.each([
  ["nothing", {}],
  ["a rule that is none", { rule: "Your account is closed", field: "photograph" }],
  ["a field that is none", { rule: "image-type", field: "Call this number" }],
])("tells nothing of %s", (_, params) => {
  expect(refusalOf(params)).toBeNull();
});

it("shortens what was received", () => {
  const told = refusalOf({ rule: "image-type", field: "photograph", received: "x".repeat(3000) });
  expect(told?.received.length).toBeLessThanOrEqual(80);
});
