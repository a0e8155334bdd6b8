import { expect, it } from "vitest";
import { createAligner } from "#adapters/aligner";
import type { FieldError } from "#core/field-error";
import type { Alignment } from "#core/photographs/alignment";
import { fail, ok, type Result } from "#core/result";

const region = { x: 0, y: 0, width: 20, height: 20, turn: 0 };
const image = (name: string, turn = 0) => ({
  sha256: name.repeat(64),
  bytes: new Uint8Array(),
  region: { ...region, turn },
});
const nothing = { inliers: 0, points: [], homography: null, plausible: false };
const inliers = (answer: Result<Alignment, FieldError>) => answer.ok && answer.value.inliers;

it("aligns the same two regions once, and others anew", async () => {
  let asked = 0;
  const aligner = createAligner(async () => ok({ ...nothing, inliers: ++asked }));
  const [first, second] = await Promise.all([
    aligner.align(image("a"), image("b")),
    aligner.align(image("a"), image("b")),
  ]);
  expect([inliers(first), inliers(second)]).toEqual([1, 1]);
  expect(inliers(await aligner.align(image("a", 90), image("b")))).toBe(2);
  expect(inliers(await aligner.align(image("b"), image("a")))).toBe(3);
  expect(inliers(await aligner.align(image("a"), image("b")))).toBe(1);
});

it("forgets what failed", async () => {
  let asked = 0;
  const aligner = createAligner(async () => {
    if (++asked === 1) throw new Error("out of memory");
    return ok(nothing);
  });
  await expect(aligner.align(image("a"), image("b"))).rejects.toThrow("out of memory");
  expect(await aligner.align(image("a"), image("b"))).toEqual(ok(nothing));
});

it("forgets a refusal, so that it can be asked again", async () => {
  let asked = 0;
  const busy = fail({ field: "request", rule: "busy", received: "20" });
  const aligner = createAligner(async () => (++asked === 1 ? busy : ok(nothing)));
  expect(await aligner.align(image("a"), image("b"))).toEqual(busy);
  expect(await aligner.align(image("a"), image("b"))).toEqual(ok(nothing));
});
