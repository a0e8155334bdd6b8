import { describe, expect, it } from "vitest";
import type { EntryCommand } from "#core/review/command";
import type { EntryHistory } from "#core/review/entry-history";
import { revisionState } from "#core/review/standing";
import {
  after,
  appeal,
  at,
  author,
  challenge,
  close,
  decideIt,
  judge,
  mara,
  member,
  moss,
  other,
  record,
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

const CHALLENGED = [...VERIFIED, challenge(80)];
const toReview = { consequence: { kind: "new revision to review", revision: "r1" } } as const;
const away = { consequence: { kind: "superseded", entry: "anchor-two" } } as const;
const dismissed = { ruling: "dismissed", consequence: { kind: "no change" } } as const;
const overturned = [judge(92, moss, "overturn"), judge(93, mara, "overturn")];
const voter = member("rosa", { roles: ["reviewer", "moderator"] });
const writer = member("author", { roles: ["moderator"] });
const plaintiff = member("other", { roles: ["moderator"] });

describe("a challenge", () => {
  it.each<[string, readonly EntryCommand[], EntryCommand, readonly string[] | string]>([
    ["is raised by any member", VERIFIED, challenge(80), ["challenged"]],
    ["is raised by the author too", VERIFIED, challenge(80, author), ["challenged"]],
    ["is raised once", CHALLENGED, challenge(81), []],
    ["is raised against the verified revision only", SUBMITTED, challenge(1), "verified-only"],
    ["is not raised twice with one claim", CHALLENGED, challenge(81, other, "c2"), "challenge-open"],
    [
      "is raised with the same claim by another member",
      CHALLENGED,
      challenge(81, author, "c2"),
      ["challenged"],
    ],
    [
      "is raised again once the first is decided",
      [...CHALLENGED, decideIt(81, dismissed)],
      challenge(82, other, "c2"),
      ["challenged"],
    ],
    [
      "has evidence of 20 characters",
      VERIFIED,
      { ...challenge(80), evidence: { text: "No.", citations: [], photographs: [] } } as EntryCommand,
      "text-shortest",
    ],
    [
      "is not raised by a suspended member",
      VERIFIED,
      challenge(80, member("other", { suspended: true })),
      "member-suspended",
    ],
    ["is decided by a moderator", CHALLENGED, decideIt(81), ["challenge decided"]],
    ["is not decided by a reviewer", CHALLENGED, decideIt(81, { by: rosa }), "role-needed"],
    ["is not decided by who challenged", CHALLENGED, decideIt(81, { by: plaintiff }), "tie-challenged"],
    ["is not decided by who wrote", CHALLENGED, decideIt(81, { by: writer }), "tie-wrote"],
    ["is not decided by who voted", CHALLENGED, decideIt(81, { by: voter }), "tie-voted"],
    ["is decided once", [...CHALLENGED, decideIt(81)], decideIt(82), []],
    ["is not decided anew", [...CHALLENGED, decideIt(81)], decideIt(82, { by: moss }), "challenge-decided"],
    ["is known before it is decided", VERIFIED, decideIt(81), "challenge-unknown"],
    [
      "that is dismissed changes nothing",
      CHALLENGED,
      decideIt(81, { ruling: "dismissed" }),
      "dismissed-changes-nothing",
    ],
    [
      "begins a review with its decision",
      CHALLENGED,
      decideIt(81, toReview),
      ["challenge decided", "submitted"],
    ],
    [
      "does not supersede an entry by itself",
      CHALLENGED,
      decideIt(81, { consequence: { kind: "superseded", entry: "anchor" } }),
      "into-itself",
    ],
    [
      "sends an existing revision to review",
      CHALLENGED,
      decideIt(81, { consequence: { kind: "new revision to review", revision: "r9" } }),
      "revision-unknown",
    ],
    [
      "changes nothing where another has taken the revision away",
      [...CHALLENGED, challenge(80, author, "c2"), decideIt(81)],
      decideIt(82, { by: moss, challenge: "c2" }),
      "verified-no-longer",
    ],
  ])("%s", (_, story, command, follows) => {
    expect(when(story, command)).toEqual(follows);
  });

  it("needs the reason to be that long", () => {
    expect(when(CHALLENGED, { ...decideIt(81), reason: "x".repeat(49) } as EntryCommand)).toBe(
      "text-shortest",
    );
    expect(when(CHALLENGED, { ...decideIt(81), reason: "x".repeat(50) } as EntryCommand)).toEqual([
      "challenge decided",
    ]);
  });

  it("sends a newer revision to review only if it was made from the challenged one", () => {
    const newer = [
      ...VERIFIED,
      record(73, revision(2)),
      record(74, revision(3, { parents: ["r2"] })),
      challenge(80),
    ];
    const send = (id: string) =>
      decideIt(81, { consequence: { kind: "new revision to review", revision: id } });
    expect(after(...newer, send("r3"))).toMatchObject({ verified: null, shown: "r3", state: "under review" });
    const votes = [rosa, ruth, rolf].map((each) => vote(75, each, "support", "r2"));
    const second = [
      ...VERIFIED,
      record(73, revision(2)),
      submit(74, "r2"),
      ...votes,
      close(150),
      challenge(151, other, "c1", "r2"),
    ];
    expect(
      when(second, decideIt(152, { consequence: { kind: "new revision to review", revision: "r1" } })),
    ).toBe("made-from-challenged");
  });
});

describe("the state of a challenged entry", () => {
  it.each<[string, readonly EntryCommand[], Partial<EntryHistory>]>([
    [
      "is disputed, its verified revision still shown",
      CHALLENGED,
      { state: "disputed", shown: "r1", verified: "r1" },
    ],
    [
      "is verified when the challenge is dismissed",
      [...CHALLENGED, decideIt(81, dismissed)],
      { state: "verified", verified: "r1" },
    ],
    [
      "is verified when upheld without change",
      [...CHALLENGED, decideIt(81, { consequence: { kind: "no change" } })],
      { state: "verified", verified: "r1" },
    ],
    [
      "stays disputed by a second challenge",
      [...CHALLENGED, challenge(80, author, "c2"), decideIt(81, dismissed)],
      { state: "disputed" },
    ],
    [
      "is withdrawn by decision",
      [...CHALLENGED, decideIt(81)],
      { state: "withdrawn", verified: null, shown: "r1" },
    ],
    [
      "is superseded by decision",
      [...CHALLENGED, decideIt(81, away)],
      { state: "superseded", replacedBy: "anchor-two", verified: null },
    ],
    [
      "goes back to review by decision, without its old votes",
      [...CHALLENGED, decideIt(81, toReview), close(200)],
      { state: "under review", verified: null, shown: "r1" },
    ],
    [
      "is disputed while an upheld decision is under appeal",
      [...CHALLENGED, decideIt(81, away), appeal(90)],
      { state: "disputed", shown: "r1", replacedBy: null },
    ],
    [
      "stays verified while a dismissal is under appeal",
      [...CHALLENGED, decideIt(81, dismissed), appeal(90, other)],
      { state: "verified", verified: "r1" },
    ],
    [
      "stands verified again when the withdrawal is overturned",
      [...CHALLENGED, decideIt(81), appeal(90), ...overturned],
      { state: "verified", verified: "r1" },
    ],
    [
      "stands verified again when its replacement is overturned",
      [...CHALLENGED, decideIt(81, away), appeal(90), ...overturned],
      { state: "verified", replacedBy: null },
    ],
    [
      "stands verified again when its review is overturned",
      [...CHALLENGED, decideIt(81, toReview), appeal(90), ...overturned],
      { state: "verified", verified: "r1" },
    ],
    [
      "stays withdrawn when the decision stands",
      [...CHALLENGED, decideIt(81), appeal(90), judge(91, moss, "let stand"), judge(92, mara, "let stand")],
      { state: "withdrawn", verified: null },
    ],
    [
      "goes back to review when a dismissal is overturned",
      [...CHALLENGED, decideIt(81, dismissed), appeal(90, other), ...overturned],
      { state: "under review", verified: null, shown: "r1" },
    ],
    [
      "is under review with a new revision after a withdrawal",
      [...CHALLENGED, decideIt(81), record(82, revision(2)), submit(82, "r2")],
      { state: "under review", shown: "r2" },
    ],
  ])("%s", (_, story, expected) => {
    expect(after(...story)).toMatchObject(expected);
  });

  it("keeps the review that an overturned decision had begun, as ended by it", () => {
    const history = after(...CHALLENGED, decideIt(81, toReview), vote(82, rosa), appeal(90), ...overturned);
    expect(history.reviews.at(-1)).toMatchObject({
      end: { is: "appeal overturned", at: at(93) },
      votes: [{}],
    });
    expect(revisionState(history, "r1")).toBe("verified");
  });

  it("is verified by a review anew, and then an old appeal changes nothing", () => {
    const again = [
      ...CHALLENGED,
      decideIt(81, toReview),
      vote(82, rosa),
      vote(82, ruth),
      vote(82, rolf),
      close(160),
    ];
    expect(after(...again)).toMatchObject({ state: "verified", verified: "r1" });
    expect(
      after(...again, appeal(161), ...[judge(162, moss, "overturn"), judge(163, mara, "overturn")]),
    ).toMatchObject({ verified: "r1" });
  });

  it("takes nothing new once another entry stands instead", () => {
    const superseded = [...CHALLENGED, decideIt(81, away)];
    expect(when(superseded, record(82, revision(2)))).toBe("entry-replaced");
    expect(when(superseded, challenge(82, other, "c9"))).toBe("entry-replaced");
  });
});
