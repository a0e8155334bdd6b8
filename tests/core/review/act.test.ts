import { describe, expect, it } from "vitest";
import type { EntryCommand } from "#core/review/command";
import { hiddenContent } from "#core/review/standing";
import {
  after,
  answer,
  appeal,
  at,
  author,
  challenge,
  close,
  decideIt,
  member,
  mina,
  moss,
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

const reason = "It has to be so.";
const photograph = { kind: "photograph", photograph: "p1", sha256: "abc" } as const;
const hide = (hours: number, act = "a1", by = mina): EntryCommand => ({
  type: "hide content",
  at: at(hours),
  by,
  act,
  what: photograph,
  ground: "rights",
  reason,
});
const merge = (hours: number, into = "anchor-two", act = "a2", by = mina): EntryCommand => ({
  type: "merge",
  at: at(hours),
  by,
  act,
  into,
  reason,
});
const lock = (hours: number, act = "a3", by = mina): EntryCommand => ({
  type: "lock",
  at: at(hours),
  by,
  act,
  reason,
});
const undo = (hours: number, act: string, by = moss): EntryCommand => ({
  type: "undo an act",
  at: at(hours),
  by,
  act,
  reason,
});

describe("an act of moderation", () => {
  it.each<[string, readonly EntryCommand[], EntryCommand, readonly string[] | string]>([
    ["hides a photograph", VERIFIED, hide(80), ["content hidden"]],
    ["hides it once", [...VERIFIED, hide(80)], hide(81), []],
    ["hides it once, whoever asks", [...VERIFIED, hide(80)], hide(81, "a9", moss), []],
    [
      "hides a text of a revision that is there",
      VERIFIED,
      { ...hide(80), what: { kind: "text", revision: "r9", field: "title", sha256: "a" } } as EntryCommand,
      "revision-unknown",
    ],
    [
      "hides a text",
      VERIFIED,
      { ...hide(80), what: { kind: "text", revision: "r1", field: "title", sha256: "a" } } as EntryCommand,
      ["content hidden"],
    ],
    ["merges", VERIFIED, merge(80), ["merged"]],
    ["merges once", [...VERIFIED, merge(80)], merge(81, "anchor-two", "a8"), []],
    [
      "does not merge elsewhere besides",
      [...VERIFIED, merge(80)],
      merge(81, "third", "a8"),
      "merged-already",
    ],
    ["does not merge an entry into itself", VERIFIED, merge(80, "anchor"), "into-itself"],
    ["locks", SUBMITTED, lock(1), ["locked"]],
    ["locks once", [...SUBMITTED, lock(1)], lock(2, "a8"), []],
    [
      "has a reason of 10 characters",
      SUBMITTED,
      { ...lock(1), reason: "Nine char" } as EntryCommand,
      "text-shortest",
    ],
    ["is a moderator's", SUBMITTED, lock(1, "a3", rosa), "role-needed"],
    [
      "is no administrator's",
      SUBMITTED,
      lock(1, "a3", member("root", { roles: ["administrator"] })),
      "role-needed",
    ],
    ["is undone by another moderator", [...SUBMITTED, lock(1)], undo(2, "a3"), ["act undone"]],
    ["is not undone by who did it", [...SUBMITTED, lock(1)], undo(2, "a3", mina), "own-act"],
    ["is undone once", [...SUBMITTED, lock(1), undo(2, "a3")], undo(3, "a3"), []],
    ["must be there to be undone", SUBMITTED, undo(2, "a3"), "act-unknown"],
    [
      "can be done again after it was undone",
      [...SUBMITTED, lock(1), undo(2, "a3")],
      lock(3, "a8"),
      ["locked"],
    ],
  ])("%s", (_, story, command, follows) => {
    expect(when(story, command)).toEqual(follows);
  });

  it("hides until it is undone, and keeps who, why and the hash", () => {
    const history = after(...VERIFIED, hide(80));
    expect(hiddenContent(history)).toEqual([photograph]);
    expect(history.acts).toMatchObject([
      { by: { id: "mina" }, reason, did: { ground: "rights", what: { sha256: "abc" } } },
    ]);
    expect(hiddenContent(after(...VERIFIED, hide(80), undo(81, "a1")))).toEqual([]);
  });

  it("merges until it is undone: then the entry is what it was", () => {
    expect(after(...VERIFIED, merge(80))).toMatchObject({
      state: "superseded",
      replacedBy: "anchor-two",
      verified: "r1",
    });
    expect(after(...VERIFIED, merge(80), undo(81, "a2"))).toMatchObject({
      state: "verified",
      replacedBy: null,
    });
  });
});

describe("a locked entry", () => {
  const locked = [...VERIFIED, record(74, revision(2)), submit(74, "r2"), challenge(75), lock(76)];
  it.each<[string, EntryCommand]>([
    ["revision", record(80, revision(3))],
    ["vote", vote(80, rosa, "support", "r2")],
    ["challenge", challenge(80, author, "c2")],
    ["withdrawal", { type: "withdraw a submission", at: at(80), by: author, revision: "r2", reason: "" }],
  ])("takes no %s", (_, command) => {
    expect(when(locked, command)).toBe("entry-locked");
  });

  it("takes no submission, answer or appeal", () => {
    expect(when([record(0), lock(1)], submit(2))).toBe("entry-locked");
    expect(when([...SUBMITTED, vote(1, rosa, "oppose"), lock(2)], answer(3, author, "rosa"))).toBe(
      "entry-locked",
    );
    expect(when([...VERIFIED, challenge(80), decideIt(81), lock(82)], appeal(83))).toBe("entry-locked");
  });

  it("takes moderators' acts and decisions", () => {
    expect(when(locked, decideIt(80))).toEqual(["challenge decided"]);
    expect(when(locked, hide(80))).toEqual(["content hidden"]);
    expect(when(locked, undo(80, "a3"))).toEqual(["act undone"]);
  });

  it("closes no review until it is unlocked", () => {
    const story = [...SUBMITTED, vote(1, rosa), vote(1, ruth), vote(1, rolf), lock(2)];
    expect(when(story, close(800))).toEqual([]);
    expect(when(story, undo(100, "a3"))).toEqual(["act undone", "review closed"]);
    expect(after(...story, undo(100, "a3"))).toMatchObject({ locked: false, state: "verified" });
  });
});
