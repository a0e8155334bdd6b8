import { describe, expect, it } from "vitest";
import { checkRegion, scaleRegion, wholeOf, withMargin } from "#core/photographs/region";

const image = { width: 400, height: 300 };

describe("a region", () => {
  it("may be the whole image", () => {
    expect(checkRegion(wholeOf(image), image)).toEqual({ ok: true, value: wholeOf(image) });
  });

  it.each([
    [{ x: -1, y: 0, width: 100, height: 100, turn: 0 }, "region-inside"],
    [{ x: 350, y: 0, width: 100, height: 100, turn: 0 }, "region-inside"],
    [{ x: 0, y: 0, width: 4, height: 100, turn: 0 }, "region-size"],
    [{ x: 0, y: 0, width: Number.NaN, height: 100, turn: 0 }, "region-numbers"],
  ])("%j is refused by the rule %s", (region, rule) => {
    expect(checkRegion(region, image)).toMatchObject({ ok: false, error: { field: "region", rule } });
  });

  it("may reach past the edges when it is turned, with its centre inside", () => {
    const tall = { width: 300, height: 400 };
    const wide = { x: -40, y: 150, width: 380, height: 100, turn: 90 };
    expect(checkRegion(wide, tall)).toMatchObject({ ok: true });
    expect(checkRegion({ ...wide, turn: 0 }, tall)).toMatchObject({ error: { rule: "region-inside" } });
    expect(checkRegion({ ...wide, x: 200, width: 600 }, tall)).toMatchObject({
      error: { rule: "region-inside" },
    });
  });

  it("turns within one full turn", () => {
    const turned = checkRegion({ ...wholeOf(image), turn: -90 }, image);
    expect(turned).toMatchObject({ value: { turn: 270 } });
  });

  it("gets an eighth of its longer side all round, as far as the photograph reaches", () => {
    const inner = { x: 100, y: 100, width: 160, height: 80, turn: 5 };
    expect(withMargin(inner, image)).toEqual({ x: 80, y: 80, width: 200, height: 120, turn: 5 });
    expect(withMargin({ ...inner, x: 10 }, image)).toMatchObject({ x: 0, width: 180 });
    expect(withMargin(wholeOf(image), image)).toEqual(wholeOf(image));
    expect(withMargin({ ...inner, x: -20, turn: 90 }, image)).toMatchObject({ x: -20, width: 160 });
  });

  it("is carried over to a smaller image", () => {
    expect(scaleRegion({ x: 100, y: 50, width: 200, height: 80, turn: 30 }, 0.5)).toEqual({
      x: 50,
      y: 25,
      width: 100,
      height: 40,
      turn: 30,
    });
  });
});
