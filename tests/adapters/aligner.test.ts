import { expect, it } from "vitest";
import { createAligner } from "#adapters/aligner";

const region = { x: 0, y: 0, width: 20, height: 20, turn: 0 };
const image = (name: string, turn = 0) => ({
  sha256: name.repeat(64),
  bytes: new Uint8Array(),
  region: { ...region, turn },
});
const nothing = { inliers: 0, points: [], homography: null, plausible: false };

it("aligns the same two regions once, and others anew", async () => {
  let asked = 0;
  const aligner = createAligner(async () => ({ ...nothing, inliers: ++asked }));
  const [first, second] = await Promise.all([
    aligner.align(image("a"), image("b")),
    aligner.align(image("a"), image("b")),
  ]);
  expect([first.inliers, second.inliers]).toEqual([1, 1]);
  expect((await aligner.align(image("a", 90), image("b"))).inliers).toBe(2);
  expect((await aligner.align(image("b"), image("a"))).inliers).toBe(3);
  expect((await aligner.align(image("a"), image("b"))).inliers).toBe(1);
});

it("forgets what failed", async () => {
  let asked = 0;
  const aligner = createAligner(async () => {
    if (++asked === 1) throw new Error("out of memory");
    return nothing;
  });
  await expect(aligner.align(image("a"), image("b"))).rejects.toThrow("out of memory");
  expect(await aligner.align(image("a"), image("b"))).toEqual(nothing);
});
