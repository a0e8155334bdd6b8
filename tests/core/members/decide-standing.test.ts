import { describe, expect, it } from "vitest";
import { actingAs, type Member } from "#core/members/account";
import { decideStanding, type StandingCommand, standingAfter } from "#core/members/decide-standing";
import { parseStanding } from "#core/members/parse-standing";

const AT = "2026-01-01T00:00:00.000Z";
const member = (id: string, more: Partial<Member> = {}): Member => ({
  id,
  name: `Member ${id}`,
  about: "",
  createdAt: AT,
  interests: [],
  isModerator: false,
  isAdministrator: false,
  fields: [],
  suspendedAt: null,
  ...more,
});
const moderator = actingAs(member("m", { isModerator: true }));
const administrator = actingAs(member("a", { isAdministrator: true }));

const decide = (of: Member, command: StandingCommand, by: Parameters<typeof decideStanding>[1] = moderator) =>
  decideStanding(of, by, command, "For good reason.", AT);
const ruleOf = (decided: ReturnType<typeof decide>) => (decided.ok ? "allowed" : decided.error.rule);

describe("a member's standing", () => {
  it("is what was appointed last, and who did it and why is written down", () => {
    const decided = decide(member("x"), { type: "appoint reviewer", fields: ["toys", "glass", "toys"] });
    expect(decided).toEqual({
      ok: true,
      value: [
        {
          type: "reviewer appointed",
          fields: ["toys", "glass"],
          at: AT,
          by: { id: "m", name: "Member m" },
          member: { id: "x", name: "Member x" },
          reason: "For good reason.",
        },
      ],
    });
    if (decided.ok) expect(standingAfter(member("x"), decided.value).fields).toEqual(["toys", "glass"]);
  });

  it.each<[Partial<Member>, StandingCommand]>([
    [{ fields: ["glass", "toys"] }, { type: "appoint reviewer", fields: ["toys", "glass"] }],
    [{}, { type: "appoint reviewer", fields: [] }],
    [{ isModerator: true }, { type: "appoint moderator" }],
    [{}, { type: "dismiss moderator" }],
    [{ suspendedAt: AT }, { type: "suspend" }],
    [{}, { type: "restore" }],
  ])("does not change where it stands so already: %j, %j", (more, command) => {
    expect(decide(member("x", more), command, administrator)).toEqual({ ok: true, value: [] });
  });

  it.each<StandingCommand>([
    { type: "appoint reviewer", fields: ["toys"] },
    { type: "appoint moderator" },
    { type: "appoint administrator" },
    { type: "suspend" },
  ])("goes back to what it was when %j is undone", (command) => {
    const back: Record<string, StandingCommand> = {
      "appoint reviewer": { type: "appoint reviewer", fields: [] },
      "appoint moderator": { type: "dismiss moderator" },
      suspend: { type: "restore" },
    };
    const before = member("x");
    const done = decide(before, command, { kind: "host" });
    const after = { ...before, ...standingAfter(before, done.ok ? done.value : []) };
    expect(after).not.toEqual(before);
    const undo = back[command.type];
    if (!undo) return;
    const undone = decide(after, undo, { kind: "host" });
    expect(standingAfter(after, undone.ok ? undone.value : [])).toEqual(before);
  });

  it("is changed by nobody for themselves", () => {
    expect(
      ruleOf(decide(member("m", { isModerator: true }), { type: "appoint reviewer", fields: ["toys"] })),
    ).toBe("not-oneself");
    expect(ruleOf(decide(member("a"), { type: "suspend" }, administrator))).toBe("not-oneself");
  });

  it("is suspended by an administrator alone where a moderator or administrator is concerned", () => {
    for (const command of [{ type: "suspend" }, { type: "restore" }] as const) {
      expect(ruleOf(decide(member("x", { isModerator: true }), command))).toBe("administrator-only");
      expect(ruleOf(decide(member("x", { isAdministrator: true }), command))).toBe("administrator-only");
      expect(ruleOf(decide(member("x", { isModerator: true }), command, administrator))).toBe("allowed");
    }
  });

  it("makes an administrator of nobody but by the host, and appoints no suspended member", () => {
    expect(ruleOf(decide(member("x"), { type: "appoint administrator" }, administrator))).toBe("host-only");
    expect(
      ruleOf(decide(member("x", { suspendedAt: AT }), { type: "appoint reviewer", fields: ["toys"] })),
    ).toBe("whom-suspended");
  });
});

it("takes fields that are ticked and no others, and a reason of 20 signs", () => {
  const typed = {
    "field toys": "yes",
    "field glass": "no",
    "field spoons": "yes",
    reason: "Wrote the book on them.",
  };
  expect(parseStanding("reviewer", typed)).toEqual({
    ok: true,
    value: { command: { type: "appoint reviewer", fields: ["toys"] }, reason: "Wrote the book on them." },
  });
  const refused = parseStanding("suspend", { reason: "Because." });
  expect(refused.ok ? "" : refused.error.map(({ field, rule }) => `${field} ${rule}`).join()).toBe(
    "reason text-shortest",
  );
});
