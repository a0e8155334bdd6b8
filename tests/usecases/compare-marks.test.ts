import { describe, expect, it } from "vitest";
import type { RevisionView } from "#core/entries/revision";
import type { KeptLookUp } from "#core/look-ups/kept-look-up";
import type { Photograph } from "#core/photographs/photograph";
import { fail, ok } from "#core/result";
import { compareMarks } from "#usecases/object-files/compare-marks";
import { SCHOONER } from "../core/object-files/steamer-story.ts";
import { fileOf, hash, id, pin, type Typed } from "../core/object-files/story.ts";

const photograph = (n: number): Photograph => ({
  ...{ id: id(600 + n), sha256: hash(600 + n), width: 400, height: 300, pixelsPerMm: null, impression: null },
  ...{
    region: { x: 100, y: 50, width: 200, height: 200, turn: 3 },
    shows: "",
    licence: "CC BY 4.0",
    credit: "",
  },
});
const OWN = hash(900);
const LOOK_UP = { look_up: id(700), model_name: "marks", model_version: "7", probability: "0.9" };
const MARK: Typed = ["mark", { id: id(3), kind: "mark", place: "deck" }];
const TAKEN: Typed = [
  "photograph",
  { id: id(9), sha256: OWN, width: "1000", height: "800", of: "mark", item: id(3) },
];
const content = fileOf("tin and wooden toys", MARK, pin(3, SCHOONER, LOOK_UP), TAKEN);
const byHand = fileOf("tin and wooden toys", MARK, pin(3, SCHOONER), TAKEN);

/** A reference of three photographs; `lies` says on which of them a mark can be laid. */
function world(lies: (sha256: string) => boolean, { hidden = "", nearest = "", isBusy = false } = {}) {
  const asked: string[] = [];
  const view = { photographs: [1, 2, 3].map(photograph) } as unknown as RevisionView["view"];
  const kept = { matches: [{ hit: { photographId: nearest } }] } as unknown as KeptLookUp;
  return {
    asked,
    revisions: {
      shown: async (_: string, number: number) => (number === 1 ? ({ view } as RevisionView) : null),
    },
    contents: { isHiddenImage: async (sha256: string) => sha256 === hidden },
    lookUps: { find: async () => (nearest === "" ? null : kept) },
    blobs: { get: async (sha256: string) => Buffer.from(sha256) },
    objectImages: {
      has: async () => ({ sha256: OWN, width: 1000, height: 800, type: "image/jpeg" as const }),
    },
    marks: {
      find: async () => [{ region: { x: 400, y: 300, width: 100, height: 100, turn: 0 }, confidence: 0.9 }],
    },
    aligner: {
      async align(_: unknown, { sha256 }: { readonly sha256: string }) {
        asked.push(sha256);
        if (isBusy) return fail({ field: "request", rule: "busy", received: "20" });
        const homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];
        return ok({ inliers: 20, points: [], homography, plausible: lies(sha256) });
      },
    },
  };
}

describe("what a file's marks are compared with in its report", () => {
  it("is the first photograph of the pinned revision on which the mark can be laid", async () => {
    const needs = world((sha256) => sha256 === hash(602));
    const compared = await compareMarks(needs, { id: "file", content });
    expect(compared[id(3)]?.photograph.sha256).toBe(hash(602));
    expect(compared[id(3)]?.laid?.own).toBe(OWN);
    // Framed where the mark is, with some room about it.
    expect(compared[id(3)]?.laid?.region).toMatchObject({ x: 387.5, width: 125 });
    expect(needs.asked).toEqual([hash(601), hash(602)]);
  });

  it("tries the photograph first that the look-up found nearest", async () => {
    const needs = world(() => true, { nearest: id(603) });
    expect((await compareMarks(needs, { id: "file", content }))[id(3)]?.photograph.sha256).toBe(hash(603));
    expect(needs.asked).toEqual([hash(603)]);
  });

  it("never shows a photograph that moderators hid", async () => {
    const needs = world(() => false, { hidden: hash(601) });
    const compared = await compareMarks(needs, { id: "file", content });
    expect(compared[id(3)]).toEqual({ photograph: photograph(2), laid: null });
    expect(needs.asked).not.toContain(hash(601));
  });

  it("is not laid over where the match was chosen by hand, or too many wait", async () => {
    const needs = world(() => true);
    const chosen = await compareMarks(needs, { id: "file", content: byHand });
    expect(chosen[id(3)]).toEqual({ photograph: photograph(1), laid: null });
    expect(needs.asked).toEqual([]);
    const busy = await compareMarks(
      world(() => true, { isBusy: true }),
      { id: "file", content },
    );
    expect(busy[id(3)]?.laid).toBeNull();
  });
});
