import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { proposeLetters } from "#core/reading/propose-letters";
import { readLetters } from "#ml/letters/read-letters";

const SIZE = 600;
const drawing = (inside: string) =>
  sharp(
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" width="${SIZE}" height="${SIZE}">
        <rect width="${SIZE}" height="${SIZE}" fill="#cfc8ba"/>
        <g font-family="sans-serif" font-weight="bold" fill="#2c2a28">${inside}</g></svg>`,
    ),
  )
    .png()
    .toBuffer();

const LINES = `<text x="300" y="270" font-size="84" text-anchor="middle">MARROW</text>
  <text x="300" y="390" font-size="60" text-anchor="middle">AND SONS</text>`;
/** Letters one by one round the middle, heads outwards. */
const RING = [..."HOLLOW MILL POTTERY "]
  .map((letter, i, all) => {
    const degrees = (360 * i) / all.length - 90;
    return `<text transform="rotate(${degrees} 300 300) translate(300 90)" font-size="62" text-anchor="middle">${letter}</text>`;
  })
  .join("");

const whole = { x: 0, y: 0, width: SIZE, height: SIZE, turn: 0 };
const proposed = async (bytes: Uint8Array, turn = 0) =>
  proposeLetters(await readLetters(bytes, { ...whole, turn }));

describe("letters that a machine reads", { timeout: 60_000 }, () => {
  it.each([0, 90, 180, 270])("are read in lines, the photograph turned by %d degrees", async (turn) => {
    const [best] = await proposed(
      await sharp(await drawing(LINES))
        .rotate(turn)
        .png()
        .toBuffer(),
    );
    expect(best?.letters.replaceAll(" ", "")).toBe("MARROW/ANDSONS");
    expect(best?.sure).toBeGreaterThan(0.8);
  });

  it("are read where the region says how the photograph is turned", async () => {
    const turned = await sharp(await drawing(LINES))
      .rotate(90)
      .png()
      .toBuffer();
    const [best] = await proposed(turned, -90);
    expect(best?.letters.replaceAll(" ", "")).toBe("MARROW/ANDSONS");
  });

  it("are read round the middle", async () => {
    const ring = (await proposed(await drawing(RING))).find(({ along }) => along === "ring");
    for (const word of ["HOLLOW", "MILL", "POTTERY"])
      expect(ring?.letters.replaceAll(" ", "")).toContain(word);
  });

  it("are none where nothing is written", async () => {
    expect(await proposed(await drawing('<circle cx="300" cy="300" r="150"/>'))).toEqual([]);
  });
});
