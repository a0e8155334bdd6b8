import { describe, expect, it } from "vitest";
import type { ActingMember } from "#core/members/member";
import { whatIsMissing } from "#core/review/close";
import type { EntryCommand } from "#core/review/command";
import { tallyReview, weighVotes } from "#core/review/weigh-votes";
import {
  after,
  answer,
  at,
  author,
  challenge,
  close,
  collector,
  decideIt,
  mina,
  other,
  owner,
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

/** The outlook of the latest review at an hour. */
function outlook(story: readonly EntryCommand[], hours: number) {
  const history = after(...story);
  const review = history.reviews.at(-1);
  if (!review) throw new Error("there is no review");
  return whatIsMissing(review, history, at(hours));
}
const lacking = (story: readonly EntryCommand[], hours: number) =>
  outlook(story, hours).missing.map((each) => each.is);

describe("a vote", () => {
  it.each<[string, readonly EntryCommand[], EntryCommand, readonly string[] | string]>([
    ["is cast by a reviewer", SUBMITTED, vote(1, rosa), ["vote cast"]],
    ["is not cast by a contributor", SUBMITTED, vote(1, other), "role-needed"],
    [
      "is not cast by a suspended reviewer",
      SUBMITTED,
      vote(1, { ...rosa, suspended: true }),
      "member-suspended",
    ],
    ["is cast once", [...SUBMITTED, vote(1, rosa)], vote(2, rosa), []],
    ["may be changed", [...SUBMITTED, vote(1, rosa)], vote(2, rosa, "oppose"), ["vote cast"]],
    ["is for a revision under review", [record(0)], vote(1, rosa), "not-under-review"],
    ["is refused in its own words when the review is over", VERIFIED, vote(73, rene), "review-over"],
    [
      "is refused when time is up, though nobody has closed the review",
      SUBMITTED,
      vote(720, rosa),
      "review-over",
    ],
    [
      "is refused when the others have closed it by then",
      [...SUBMITTED, ...three],
      vote(72, rene, "oppose"),
      "review-over",
    ],
    ["that was cast before the end is not refused after it", VERIFIED, vote(80, rosa), []],
    [
      "that completes a review closes it",
      [...SUBMITTED, vote(1, rosa), vote(2, ruth)],
      vote(72, rolf),
      ["vote cast", "review closed"],
    ],
  ])("%s", (_, story, command, follows) => {
    expect(when(story, command)).toEqual(follows);
  });

  it.each<[string, ActingMember, string | null]>([
    ["counts of a reviewer in the field", rosa, null],
    ["does not count of an author", author, "author"],
    ["does not count of a reviewer in another field", potter, "not a reviewer in the field"],
    ["does not count with an interest in the maker", collector, "interest in the maker"],
    ["does not count with an interest in the entry", owner, "interest in the entry"],
  ])("%s", (_, voter, rule) => {
    const history = after(...SUBMITTED, vote(1, voter));
    expect(history.reviews.flatMap((review) => weighVotes(history, review))).toMatchObject([
      { notCounted: rule },
    ]);
  });

  it("does not count of whoever wrote an earlier change that was never verified", () => {
    const joint = revision(2, { authors: ["other"] });
    const story = [
      ...SUBMITTED,
      record(1, joint, other),
      submit(1, "r2", other),
      vote(2, author, "support", "r2"),
    ];
    const history = after(...story);
    expect(
      history.reviews.at(-1) && tallyReview(history, history.reviews.at(-1) as never).notCounted,
    ).toEqual([{ voter: "author", rule: "author" }]);
  });

  it("counts of whoever wrote what was verified before", () => {
    const joint = revision(2, { authors: ["other"] });
    const history = after(
      ...VERIFIED,
      record(80, joint, other),
      submit(80, "r2", other),
      vote(81, author, "support", "r2"),
    );
    expect(history.reviews.map((review) => tallyReview(history, review).counted)).toEqual([3, 1]);
  });

  it("does not count of the moderator who sent the revision back to review", () => {
    const back = decideIt(81, { by: mina, consequence: { kind: "new revision to review", revision: "r1" } });
    const history = after(...VERIFIED, challenge(80), back, vote(82, mina), vote(82, rosa));
    const review = history.reviews.at(-1);
    expect(review && tallyReview(history, review)).toMatchObject({
      counted: 1,
      notCounted: [{ voter: "mina", rule: "decides it" }],
    });
  });

  it("counts nobody on a revision of no field", () => {
    const story: EntryCommand[] = [
      {
        type: "record a revision",
        at: at(0),
        by: { importer: "Import" },
        revision: revision(1, { field: null, authors: [] }),
      },
      {
        type: "submit",
        at: at(0),
        by: { importer: "Import" },
        revision: "r1",
        policy: { ...(submit(0) as Extract<EntryCommand, { type: "submit" }>).policy },
      },
    ];
    expect(outlook([...story, ...three], 4).tally).toMatchObject({ counted: 0, support: 0 });
  });

  it("stands by its latest; the earlier stay on record", () => {
    const history = after(...SUBMITTED, vote(1, rosa, "oppose"), vote(2, rosa, "abstain"), vote(3, rosa));
    const weighed = history.reviews.flatMap((review) => weighVotes(history, review));
    expect(weighed).toMatchObject([
      { vote: { choice: "support" }, earlier: [{ choice: "oppose" }, { choice: "abstain" }] },
    ]);
  });

  it("keeps the voter as they stood: a later appointment counts nothing in", () => {
    const history = after(...SUBMITTED, vote(1, potter), vote(2, rosa));
    expect(history.reviews[0] && tallyReview(history, history.reviews[0]).counted).toBe(1);
    expect(history.reviews[0]?.votes[0]?.voter).toEqual({
      id: "potter",
      name: "POTTER",
      fields: ["ceramics"],
      interests: [],
    });
  });
});

describe("an answer", () => {
  const opposed = [...SUBMITTED, vote(1, rosa, "oppose")];
  it.each<[string, EntryCommand, readonly string[] | string]>([
    ["is given by the author", answer(2, author, "rosa"), ["vote answered"]],
    ["is given by another reviewer", answer(2, ruth, "rosa"), ["vote answered"]],
    ["is not given by the voter", answer(2, rosa, "rosa"), "own-vote"],
    ["is not given by a bystander", answer(2, other, "rosa"), "author-or-reviewer"],
    ["is given to a vote", answer(2, author, "ruth"), "vote-unknown"],
    ["is not given when the review is over", answer(720, author, "rosa"), "review-over"],
  ])("%s", (_, command, follows) => {
    expect(when(opposed, command)).toEqual(follows);
  });

  it("is given once", () =>
    expect(when([...opposed, answer(2, author, "rosa")], answer(3, author, "rosa"))).toEqual([]));

  it("answers the vote that stood: a vote cast anew has to be answered anew", () => {
    const again = {
      ...vote(3, rosa, "oppose"),
      reason: "Another reason, and still of twenty characters.",
    } as EntryCommand;
    expect(outlook([...opposed, answer(2, author, "rosa")], 4).tally.unanswered).toEqual([]);
    expect(outlook([...opposed, answer(2, author, "rosa"), again], 4).tally.unanswered).toEqual(["rosa"]);
  });
});

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
      tally: { support: 3, oppose: 0, abstain: 0, counted: 3, notCounted: [], unanswered: [] },
    });
  });

  it("that had all it needs is verified when somebody looks, however late", () => {
    expect(after(...SUBMITTED, ...three, close(5000)).state).toBe("verified");
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
