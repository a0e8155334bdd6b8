import { describe, expect, it } from "vitest";
import { parseInterval } from "#core/dates/parse";
import { pieceOfEntry } from "#core/dating/entry-statement";

const parsed = parseInterval("1871/1890~");
const period = parsed.ok ? parsed.value : null;
const words = { reason: "It bears the mark.", source: "Countermark" };

describe("an entry's period of use as evidence", () => {
  it("dates the marking, the labelling or the making by what the entry is", () => {
    const events = (["mark", "label", "construction detail"] as const).map((kind) => {
      const piece = pieceOfEntry({ kind, state: "verified", period }, words);
      return [piece?.kind, piece?.event, piece?.edtf];
    });
    expect(events).toEqual([
      ["mark", "marked", "1871/1890~"],
      ["mark", "labelled", "1871/1890~"],
      ["construction", "made", "1871/1890~"],
    ]);
  });

  it("is trusted by the entry's state, and no further than the match it was found by", () => {
    const trust = (state: "verified" | "under review" | "disputed", probability?: number) =>
      pieceOfEntry({ kind: "mark", state, period }, words, probability)?.reliability;
    expect([trust("verified"), trust("under review"), trust("disputed")]).toEqual([0.95, 0.85, 0.7]);
    expect([trust("verified", 0.9), trust("verified", 0.2)]).toEqual([0.855, 0.5]);
  });

  it("is none without a period", () => {
    expect(pieceOfEntry({ kind: "mark", state: "verified", period: null }, words)).toBeNull();
  });
});
