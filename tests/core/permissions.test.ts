import { describe, expect, it } from "vitest";
import type { Actor, Role } from "#core/members/member";
import { ACTIONS, type Action, may } from "#core/permissions";

const ACTORS = [
  "reader",
  "contributor",
  "reviewer",
  "moderator",
  "administrator",
  "suspended",
  "system",
] as const;

/** What each may do, `x` allowed and `-` refused, written out by hand: in the order of the actors above. */
const EXPECTED: Readonly<Record<Action, string>> = {
  "look up": "xxxxxx-",
  "ask a question": "xxxxxx-",
  "change one's account": "-xxxx--",
  "declare an interest": "-xxxx--",
  "write a draft": "-xxxx--",
  "keep an object file": "-xxxx--",
  "submit a revision": "-xxxx--",
  "withdraw a submission": "-xxxx--",
  "answer a vote": "-xxxx--",
  vote: "--x----",
  challenge: "-xxxx--",
  appeal: "-xxxx--",
  "decide a challenge": "---x---",
  "vote on an appeal": "---x---",
  "hide content": "---x---",
  "merge entries": "---x---",
  "lock an entry": "---x---",
  "undo an act": "---x---",
  "suspend a member": "---xx--",
  "appoint a reviewer": "---xx--",
  "appoint a moderator": "----x--",
  "see agreement": "---xx--",
  "see the log of moderation": "---xx--",
};

const member = (roles: readonly Role[], suspended = false): Actor => ({
  kind: "member",
  id: "m",
  name: "M",
  roles,
  fields: [],
  interests: [],
  suspended,
});

/** Of one role alone; who is suspended has all of them. */
function actor(who: (typeof ACTORS)[number]): Actor {
  switch (who) {
    case "reader":
      return { kind: "reader" };
    case "system":
      return { kind: "system" };
    case "suspended":
      return member(["contributor", "reviewer", "moderator", "administrator"], true);
    default:
      return member([who]);
  }
}

const CASES = Object.entries(EXPECTED).flatMap(([action, row]) =>
  ACTORS.map((who, i) => [who, action as Action, row[i] === "x"] as const),
);

describe("who may do what", () => {
  it.each(CASES)("%s: %s: %s", (who, action, allowed) => {
    expect(may(actor(who), action)).toBe(allowed);
  });

  it("was walked for every role against every action: 7 by 23, 161 cases, 64 allowed", () => {
    expect(Object.keys(EXPECTED).sort()).toEqual([...ACTIONS].sort());
    expect(CASES).toHaveLength(161);
    expect(CASES.filter(([, , allowed]) => allowed)).toHaveLength(64);
  });

  it("adds the roles of a member up", () => {
    const both = member(["contributor", "reviewer"]);
    expect([may(both, "vote"), may(both, "challenge"), may(both, "lock an entry")]).toEqual([
      true,
      true,
      false,
    ]);
  });
});
