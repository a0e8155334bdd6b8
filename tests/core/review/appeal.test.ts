import { describe, expect, it } from "vitest";
import type { EntryCommand } from "#core/review/command";
import {
  after,
  appeal,
  challenge,
  decideIt,
  judge,
  LONG,
  mara,
  member,
  milo,
  mina,
  moss,
  other,
  rolf,
  rosa,
  VERIFIED,
  when,
} from "./story.ts";

const CHALLENGED = [...VERIFIED, challenge(80)];
const dismissed = { ruling: "dismissed", consequence: { kind: "no change" } } as const;
const overturned = [judge(92, moss, "overturn"), judge(93, mara, "overturn")];
const voter = member("rosa", { roles: ["reviewer", "moderator"] });
const writer = member("author", { roles: ["moderator"] });
const plaintiff = member("other", { roles: ["moderator"] });

describe("an appeal", () => {
  const DECIDED = [...CHALLENGED, decideIt(81)];
  const APPEALED = [...DECIDED, appeal(90)];
  it.each<[string, readonly EntryCommand[], EntryCommand, readonly string[] | string]>([
    ["is brought by an author", DECIDED, appeal(90), ["appealed"]],
    ["is brought by who challenged", DECIDED, appeal(90, other), ["appealed"]],
    ["is brought once", APPEALED, appeal(91), []],
    ["is brought by one party only", APPEALED, appeal(91, other), "appealed-already"],
    ["is not brought by a bystander", DECIDED, appeal(90, rosa), "party-only"],
    ["is not brought before a decision", CHALLENGED, appeal(90), "challenge-undecided"],
    ["has a reason", DECIDED, { ...appeal(90), reason: "" } as EntryCommand, "text-shortest"],
    ["is judged by another moderator", APPEALED, judge(91, moss, "overturn"), ["appeal vote cast"]],
    ["is not judged by who decided", APPEALED, judge(91, mina, "let stand"), "tie-decided"],
    ["is not judged by who challenged", APPEALED, judge(91, plaintiff, "overturn"), "tie-challenged"],
    ["is not judged by who wrote", APPEALED, judge(91, writer, "overturn"), "tie-wrote"],
    ["is not judged by who voted", APPEALED, judge(91, voter, "overturn"), "tie-voted"],
    ["is not judged by a reviewer", APPEALED, judge(91, rolf, "overturn"), "role-needed"],
    [
      "is judged with a reason of 50 characters",
      APPEALED,
      { ...judge(91, moss, "overturn"), reason: "x".repeat(49) } as EntryCommand,
      "text-shortest",
    ],
    ["is judged once by each", [...APPEALED, judge(91, moss, "overturn")], judge(92, moss, "overturn"), []],
    [
      "is not judged otherwise by the same",
      [...APPEALED, judge(91, moss, "overturn")],
      judge(92, moss, "let stand"),
      "appeal-voted",
    ],
    [
      "is settled by two that agree",
      [...APPEALED, judge(91, moss, "overturn")],
      judge(92, mara, "overturn"),
      ["appeal vote cast", "appeal decided"],
    ],
    [
      "is not settled by two that differ",
      [...APPEALED, judge(91, moss, "overturn")],
      judge(92, mara, "let stand"),
      ["appeal vote cast"],
    ],
    [
      "is settled by the third then",
      [...APPEALED, judge(91, moss, "overturn"), judge(92, mara, "let stand")],
      judge(93, milo, "let stand"),
      ["appeal vote cast", "appeal decided"],
    ],
    ["is over then", [...APPEALED, ...overturned], judge(94, milo, "overturn"), "appeal-over"],
    ["is not brought a second time", [...APPEALED, ...overturned], appeal(95, other), "appealed-already"],
    ["must be there to be judged", DECIDED, judge(91, moss, "overturn"), "not-appealed"],
    [
      "of a dismissal begins a review when it is overturned",
      [...CHALLENGED, decideIt(81, dismissed), appeal(90, other), judge(91, moss, "overturn")],
      judge(92, mara, "overturn"),
      ["appeal vote cast", "appeal decided", "submitted"],
    ],
  ])("%s", (_, story, command, follows) => {
    expect(when(story, command)).toEqual(follows);
  });

  it("keeps every vote with its reason", () => {
    expect(after(...APPEALED, ...overturned).challenges[0]?.appeal).toMatchObject({
      outcome: "overturned",
      votes: [{ choice: "overturn", reason: LONG }, { by: { id: "mara" } }],
    });
  });
});
