import { describe, expect, it } from "vitest";
import type { ActingMember } from "#core/members/member";
import type { EntryCommand } from "#core/review/command";
import { tallyReview, weighVotes } from "#core/review/weigh-votes";
import {
  after,
  answer,
  at,
  author,
  challenge,
  collector,
  decideIt,
  mina,
  other,
  outlook,
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
  VERIFIED,
  vote,
  when,
} from "./story.ts";

const three = [vote(1, rosa), vote(2, ruth), vote(3, rolf)];

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
