import sharp from "sharp";

/** A photograph that nobody else has taken: a boat's side with a scale of 100 mm, 200 pixels long, under it. */
export async function photographOfBoat(seed: number): Promise<Buffer> {
  const bar = { create: { width: 200, height: 12, channels: 3 as const, background: "#111111" } };
  const hull = {
    create: { width: 490, height: 120, channels: 3 as const, background: { r: 150, g: 40, b: seed } },
  };
  return sharp({ create: { width: 600, height: 400, channels: 3, background: "#dddddd" } })
    .composite([
      { input: hull, left: 50, top: 100 },
      { input: bar, left: 200, top: 350 },
    ])
    .jpeg()
    .toBuffer();
}
