import { describe, expect, it } from "vitest";
import { sentence } from "../../scripts/error-sentences.ts";

describe("an error in words", () => {
  it("names the field, the rule and what was received", () => {
    expect(sentence({ field: "period", rule: "edtf", received: "c1890" })).toMatch(
      /^period: .*EDTF.*“c1890”/,
    );
    const twice = { field: "key", rule: "twice", received: "anchor", params: { line: 3 } };
    expect(sentence(twice)).toBe("key: it stands on line 3 already. Received “anchor”.");
  });

  it("still says which rule it was when nobody has worded it", () => {
    expect(sentence({ field: "key", rule: "unheard-of", received: "x" })).toContain("unheard-of");
  });
});
