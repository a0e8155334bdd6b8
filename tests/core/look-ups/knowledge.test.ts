import { describe, expect, it } from "vitest";
import {
  knowsSomething,
  NOTHING_KNOWN,
  parseKnowledge,
  type TypedKnowledge,
  typedOf,
} from "#core/look-ups/knowledge";

const typed = (given: Partial<TypedKnowledge>): TypedKnowledge => ({ ...typedOf(NOTHING_KNOWN), ...given });

describe("what is known besides the photograph", () => {
  it("is nothing when no field is filled", () => {
    expect(parseKnowledge(typed({}))).toEqual({ ok: true, value: NOTHING_KNOWN });
    expect(knowsSomething(NOTHING_KNOWN)).toBe(false);
  });

  it("is read from its fields, and written into them again", () => {
    const fields = typed({
      letters: "BOD?IN",
      width_mm: "15,5",
      height_mm: "16",
      technique: "stamped",
      material: "  salt-glazed   stoneware ",
      kind: "construction detail",
    });
    const parsed = parseKnowledge(fields);
    expect(parsed).toEqual({
      ok: true,
      value: {
        letters: "BOD?IN",
        widthMm: 15.5,
        heightMm: 16,
        technique: "stamped",
        material: "salt-glazed stoneware",
        kind: "construction detail",
      },
    });
    if (!parsed.ok) return;
    expect(parseKnowledge(typedOf(parsed.value))).toEqual(parsed);
    expect(knowsSomething(parsed.value)).toBe(true);
  });

  it.each([
    [{ letters: "***" }, "letters", "letters-legible", "***"],
    [{ width_mm: "wide" }, "width_mm", "millimetres", "wide"],
    [{ width_mm: "0" }, "width_mm", "millimetres", "0"],
    [{ height_mm: "-3" }, "height_mm", "millimetres", "-3"],
    [{ height_mm: "1e9" }, "height_mm", "millimetres", "1e9"],
    [{ height_mm: "5001" }, "height_mm", "millimetres", "5001"],
    [{ technique: "hallmarked" }, "technique", "one-of", "hallmarked"],
    [{ kind: "stamp" }, "kind", "one-of", "stamp"],
    [{ material: "x".repeat(101) }, "material", "text-length", `${"x".repeat(77)}...`],
  ])("refuses %j and names field, rule and value", (given, field, rule, received) => {
    expect(parseKnowledge(typed(given))).toMatchObject({ ok: false, error: { field, rule, received } });
  });

  it.each(["letters", "width_mm", "height_mm", "technique", "material", "kind"] as const)(
    "is something when only %s is given",
    (field) => {
      const one = {
        letters: "A",
        width_mm: "1",
        height_mm: "1",
        technique: "cast",
        material: "a",
        kind: "mark",
      };
      const parsed = parseKnowledge(typed({ [field]: one[field] }));
      expect(parsed.ok && knowsSomething(parsed.value)).toBe(true);
    },
  );
});
