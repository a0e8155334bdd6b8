import { describe, expect, it } from "vitest";
import type { ActingMember } from "#core/members/member";
import { whatIsMissing } from "#core/review/close";
import type { EntryCommand } from "#core/review/command";
import { decide } from "#core/review/decide";
import { evolve, historyOf } from "#core/review/evolve";
import { DEFAULT_POLICY } from "#core/review/policy";
import { projectionOf } from "#core/review/project";
import { recordAndSubmit } from "#core/review/record-and-submit";
import {
  after,
  answer,
  at,
  author,
  challenge,
  close,
  decideIt,
  outlook,
  potter,
  record,
  rene,
  revision,
  rolf,
  rosa,
  ruth,
  SUBMITTED,
  submit,
  told,
  VERIFIED,
  vote,
  when,
} from "./story.ts";

const three = [vote(1, rosa), vote(2, ruth), vote(3, rolf)];

const lacking = (story: readonly EntryCommand[], hours: number) =>
  outlook(story, hours).missing.map((each) => each.is);

describe("a review", () => {
  const abstain = (hours: number, by: ActingMember) => vote(hours, by, "abstain");
  it.each<[string, readonly EntryCommand[], number, readonly string[]]>([
    ["lacks everything at first", SUBMITTED, 1, ["votes", "support", "time"]],
    ["lacks time with three votes at hour 71", [...SUBMITTED, ...three], 71, ["time"]],
    ["lacks a vote with two", [...SUBMITTED, vote(1, rosa), vote(2, ruth)], 72, ["votes"]],
    [
      "lacks support with three abstentions",
      [...SUBMITTED, abstain(1, rosa), abstain(1, ruth), abstain(1, rolf)],
      72,
      ["support"],
    ],
    [
      "has support with one of one and two abstentions",
      [...SUBMITTED, vote(1, rosa), abstain(1, ruth), abstain(1, rolf)],
      71,
      ["time"],
    ],
    [
      "lacks an answer with two thirds and one opposing",
      [...SUBMITTED, vote(1, rosa), vote(1, ruth), vote(1, rolf, "oppose")],
      72,
      ["answers"],
    ],
    [
      "has two thirds once that is answered",
      [...SUBMITTED, vote(1, rosa), vote(1, ruth), vote(1, rolf, "oppose"), answer(2, author, "rolf")],
      71,
      ["time"],
    ],
    [
      "lacks support with half",
      [
        ...SUBMITTED,
        vote(1, rosa),
        vote(1, ruth),
        vote(1, rolf, "oppose"),
        vote(1, rene, "oppose"),
        answer(2, author, "rolf"),
        answer(2, author, "rene"),
      ],
      72,
      ["support"],
    ],
    [
      "does not count opposition that does not count",
      [...SUBMITTED, ...three, vote(4, potter, "oppose")],
      71,
      ["time"],
    ],
  ])("%s", (_, story, hours, missing) => {
    expect(lacking(story, hours)).toEqual(missing);
  });

  it("cannot be verified with one photograph and no citation", () => {
    const has = { ...revision(1).has, photographs: 1, impressions: 1 };
    const one = [record(0, revision(1, { has })), submit(0), ...three];
    expect(outlook(one, 73).missing).toEqual([{ is: "content", lacks: ["second impression or citation"] }]);
    expect(after(...one, close(73)).state).toBe("under review");
    const cited = [record(0, revision(1, { has: { ...has, citations: 1 } })), submit(0), ...three];
    expect(after(...cited, close(73)).state).toBe("verified");
    const twice = [record(0, revision(1, { has: { ...has, photographs: 2 } })), submit(0), ...three];
    expect(outlook(twice, 73).missing).toEqual([{ is: "content", lacks: ["second impression or citation"] }]);
  });

  it("cannot be verified while a challenge is open", () => {
    const second = [...VERIFIED, record(80, revision(2)), submit(80, "r2"), challenge(81)];
    const voted = [...second, ...[rosa, ruth, rolf].map((each) => vote(82, each, "support", "r2"))];
    expect(outlook(voted, 153).missing).toEqual([{ is: "challenges", open: ["c1"] }]);
    const dismissed = decideIt(154, { ruling: "dismissed", consequence: { kind: "no change" } });
    expect(when(voted, dismissed)).toEqual(["challenge decided", "review closed"]);
    expect(after(...voted, dismissed).verified).toBe("r2");
  });

  it("says when it can close at the earliest, and when it ends", () => {
    expect(outlook(SUBMITTED, 1)).toMatchObject({ earliest: at(72), ends: at(720) });
    expect(outlook(SUBMITTED, 100)).toMatchObject({ earliest: at(100) });
    expect(outlook(SUBMITTED, 721).earliest).toBeNull();
    expect(outlook(SUBMITTED, 1).missing).toContainEqual({ is: "time", hours: 72, until: at(72) });
  });

  it("closes by itself at hour 72 and not before, with its tally", () => {
    expect(when([...SUBMITTED, ...three], close(71.9))).toEqual([]);
    const history = after(...SUBMITTED, ...three, close(72));
    expect(history.reviews[0]?.end).toEqual({
      is: "verified",
      at: at(72),
      place: 6,
      tally: { support: 3, oppose: 0, abstain: 0, counted: 3, notCounted: [], unanswered: [] },
    });
  });

  it("that had all it needs is verified when somebody looks, however late", () => {
    expect(after(...SUBMITTED, ...three, close(5000)).state).toBe("verified");
  });

  it("of an import waits for its first vote as long as it takes, and ends thirty days after that", () => {
    const imported = recordAndSubmit([], {
      at: at(0),
      by: { importer: "Import" },
      revision: revision(1, { authors: [] }),
      policy: DEFAULT_POLICY,
    });
    const history = historyOf(imported.ok ? imported.value : []);
    const [review] = history.reviews;
    if (!review) throw new Error("It was put forward.");
    expect(whatIsMissing(review, history, at(9000))).toMatchObject({ ends: null, earliest: at(9000) });
    expect(projectionOf(history).review).toMatchObject({ closesAt: null });
    const closed = decide(history, { type: "close what is over", at: at(9000) });
    expect(closed).toEqual({ ok: true, value: [] });

    const cast = decide(history, vote(9000, rosa));
    const voted = (cast.ok ? cast.value : []).reduce(evolve, history);
    expect(voted.state).toBe("under review");
    expect(projectionOf(voted).review).toMatchObject({ closesAt: at(9720) });
    expect(decide(voted, { type: "close what is over", at: at(9719) })).toEqual({ ok: true, value: [] });
    expect(decide(voted, { type: "close what is over", at: at(9720) })).toMatchObject({
      value: [{ type: "review closed", outcome: "not accepted" }],
    });
  });

  it("goes by the policy it began with", () => {
    const quick = {
      ...submit(0),
      policy: { votes: 1, support: { of: 1, outOf: 2 }, hours: 0, days: 1, reason: 5 },
    } as EntryCommand;
    expect(when([record(0), quick], vote(0, rosa))).toEqual(["vote cast", "review closed"]);
    expect(after(record(0), quick, close(24)).state).toBe("not accepted");
  });

  it("is closed by the program, which has no account", () => {
    expect(told(...VERIFIED).at(-1)).toMatchObject({
      type: "review closed",
      by: { id: null, name: "Countermark" },
    });
  });
});
