import { describe, expect, it } from "vitest";
import { framesOf, nearestFrame } from "#core/look-ups/frames";

const image = { width: 400, height: 300 };
const whole = { x: 0, y: 0, width: 400, height: 300, turn: 0 };
const region = { x: 100, y: 80, width: 80, height: 40, turn: 0 };
const hit = (similarity: number) => ({ photographId: "p", entry: "e", similarity, turn: 0 });

describe("the frames an image is looked up by", () => {
  it("is the one that was drawn, whatever is proposed", () => {
    const drawn = { ...region, turn: 12 };
    expect(framesOf(image, drawn, [{ region, confidence: 0.99 }])).toEqual([
      { region: drawn, framedBy: "person" },
    ]);
  });

  it("are the whole and the first proposal with room around it, when none was drawn", () => {
    const other = { x: 0, y: 0, width: 20, height: 20, turn: 0 };
    const proposals = [
      { region, confidence: 0.2 },
      { region: other, confidence: 0.1 },
    ];
    expect(framesOf(image, null, proposals)).toEqual([
      { region: whole, framedBy: "nobody" },
      // An eighth of the longer side, 10 pixels, on each side.
      { region: { x: 90, y: 70, width: 100, height: 60, turn: 0 }, framedBy: "proposal" },
    ]);
  });

  it("is the whole when nothing is proposed", () => {
    expect(framesOf(image, null, [])).toEqual([{ region: whole, framedBy: "nobody" }]);
  });
});

describe("the nearest of several frames", () => {
  it("is the one with the nearest photograph, wherever it stands in its list", () => {
    const one = { name: "one", hits: [hit(0.8), hit(0.7)] };
    const two = { name: "two", hits: [hit(0.6), hit(0.9)] };
    expect(nearestFrame([one, two]).name).toBe("two");
    expect(nearestFrame([two, one]).name).toBe("two");
  });

  it("is the first of equals, and of frames that find nothing", () => {
    const found = { name: "found", hits: [hit(0.5)] };
    const nothing = { name: "nothing", hits: [] };
    expect(nearestFrame([found, { ...found, name: "again" }]).name).toBe("found");
    expect(nearestFrame([nothing, { ...nothing, name: "too" }]).name).toBe("nothing");
    expect(nearestFrame([nothing, found]).name).toBe("found");
  });
});
