import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { canonicalJson } from "#adapters/canonical-json";

type Fixtures = {
  readonly values: { readonly in: string; readonly hex: string };
  readonly sorting: { readonly in: string; readonly order: readonly string[] };
  readonly numbers: readonly (readonly [string, string])[];
  readonly refused: readonly string[];
};
const rfc = JSON.parse(
  readFileSync(new URL("../../fixtures/canonical-json/rfc8785.json", import.meta.url), "utf8"),
) as Fixtures;

const double = (bits: string): number => Buffer.from(bits, "hex").readDoubleBE();

it("writes the RFC's sample byte for byte (sections 3.2.2 and 3.2.4)", () => {
  expect(Buffer.from(canonicalJson(JSON.parse(rfc.values.in))).toString("hex")).toBe(rfc.values.hex);
});

it("sorts names as the RFC's sample (section 3.2.3)", () => {
  const text = canonicalJson(JSON.parse(rfc.sorting.in));
  expect([...text.matchAll(/:"([^"]*)"/g)].map(([, value]) => value)).toEqual(rfc.sorting.order);
});

it.each(rfc.numbers)("writes the number %s of appendix B as %s", (bits, text) => {
  expect(canonicalJson(double(bits))).toBe(text);
});

it.each(rfc.refused)("refuses the number %s of appendix B", (bits) => {
  expect(() => canonicalJson(double(bits))).toThrow();
});

it("refuses what is no JSON", () => {
  expect(() => canonicalJson(undefined)).toThrow("undefined");
});
