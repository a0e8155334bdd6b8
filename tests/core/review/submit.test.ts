import { describe, expect, it } from "vitest";
import type { EntryCommand } from "#core/review/command";
import { revisionState } from "#core/review/standing";
import {
  after,
  answer,
  at,
  author,
  close,
  LONG,
  member,
  mina,
  other,
  record,
  refusal,
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

const { has } = revision(1);
const withdraw = (hours: number, by = author): EntryCommand => ({
  type: "withdraw a submission",
  at: at(hours),
  by,
  revision: "r1",
  reason: "",
});
const importer = { importer: "Import" };
const imported = revision(1, { authors: [], field: null, has: { ...has, photographs: 0, impressions: 0 } });

describe("a revision", () => {
  it.each<[string, readonly EntryCommand[], EntryCommand, readonly string[] | string]>([
    ["is recorded", [], record(0), ["revision recorded"]],
    ["is recorded once", [record(0)], record(0), []],
    ["is recorded by one of its authors", [], record(0, revision(1), other), "author-missing"],
    [
      "is not recorded by a suspended member",
      [],
      record(0, revision(1), member("author", { suspended: true })),
      "member-suspended",
    ],
    ["has the next number", [record(0)], record(1, revision(3, { parents: ["r1"] })), "revision-number"],
    [
      "is made from one of the entry",
      [record(0)],
      record(1, revision(2, { parents: ["x"] })),
      "parent-unknown",
    ],
    [
      "is made from some revision, but the first",
      [record(0)],
      record(1, revision(2, { parents: [] })),
      "parent-missing",
    ],
    ["goes under review", [record(0)], submit(0), ["submitted"]],
    ["goes under review once", SUBMITTED, submit(1), []],
    ["is unknown before it is recorded", [], submit(0), "revision-unknown"],
    ["is put forward by its author", [record(0)], submit(0, "r1", other), "author-only"],
    ["that was verified is not put forward again", VERIFIED, submit(80), []],
    [
      "that was not accepted is not put forward again",
      [...SUBMITTED, close(721)],
      submit(722),
      "reviewed-before",
    ],
    ["is withdrawn by its author", SUBMITTED, withdraw(1), ["submission withdrawn"]],
    ["is withdrawn once", [...SUBMITTED, withdraw(1)], withdraw(2), []],
    ["is not withdrawn by anybody else", SUBMITTED, withdraw(1, other), "submitter-only"],
    ["is not withdrawn when it is verified", VERIFIED, withdraw(80), "review-over"],
    ["that was withdrawn can be put forward again", [...SUBMITTED, withdraw(1)], submit(2), ["submitted"]],
    ["that was never put forward is not withdrawn", [record(0)], withdraw(1), "not-under-review"],
  ])("%s", (_, story, command, follows) => {
    expect(when(story, command)).toEqual(follows);
  });

  it.each([
    ["a title", { has: { ...has, title: false } }, "title"],
    ["a field", { field: null }, "field"],
    ["a description", { has: { ...has, description: false } }, "description"],
    ["a photograph", { has: { ...has, photographs: 0 } }, "photograph"],
    ["a licence and a credit of every photograph", { has: { ...has, uncredited: 1 } }, "licence or credit"],
  ])("needs %s to go under review", (_, over, lack) => {
    expect(refusal([record(0, revision(1, over))], submit(0))).toMatchObject({
      rule: "minimum",
      received: lack,
    });
  });

  it("that is imported goes under review as it is, and is verified by no vote while it lacks something", () => {
    const story: EntryCommand[] = [
      { type: "record a revision", at: at(0), by: importer, revision: imported },
      { ...submit(0), by: importer } as EntryCommand,
    ];
    expect(after(...story).state).toBe("under review");
    expect(after(...story, vote(1, rosa), vote(1, ruth), vote(1, rolf), close(100)).state).toBe(
      "under review",
    );
    expect(after(...story, vote(1, rosa), vote(1, ruth), vote(1, rolf), close(720)).state).toBe(
      "not accepted",
    );
  });
});

describe("the state of an entry", () => {
  it.each<[string, readonly EntryCommand[], string, string | null]>([
    ["is draft before anything is put forward", [record(0)], "draft", null],
    ["is under review then", SUBMITTED, "under review", "r1"],
    ["is verified after the votes", VERIFIED, "verified", "r1"],
    [
      "stays verified while a newer revision is under review",
      [...VERIFIED, record(80, revision(2)), submit(80, "r2")],
      "verified",
      "r1",
    ],
    ["is not accepted when its time has passed", [...SUBMITTED, close(720)], "not accepted", "r1"],
    ["is not accepted when its author withdraws", [...SUBMITTED, withdraw(1)], "not accepted", "r1"],
    [
      "is under review again with a revision after",
      [...SUBMITTED, withdraw(1), record(2, revision(2)), submit(2, "r2")],
      "under review",
      "r2",
    ],
  ])("%s", (_, story, state, shown) => {
    expect(after(...story)).toMatchObject({ state, shown });
  });

  it("follows the newer revision once that is verified, without the votes on the older", () => {
    const second = [...VERIFIED, record(80, revision(2)), submit(80, "r2")];
    expect(after(...second, close(160))).toMatchObject({
      verified: "r1",
      reviews: [{}, { votes: [], end: null }],
    });
    const voted = after(
      ...second,
      vote(81, rosa, "support", "r2"),
      vote(81, ruth, "support", "r2"),
      vote(81, rolf, "support", "r2"),
      close(160),
    );
    expect(voted).toMatchObject({ state: "verified", verified: "r2", shown: "r2" });
    expect(revisionState(voted, "r1")).toBe("superseded");
    expect(revisionState(voted, "r2")).toBe("verified");
  });

  it("does not let a revision be verified that was not made from the one verified meanwhile", () => {
    const votes = (id: string) => [rosa, ruth, rolf].map((each) => vote(2, each, "support", id));
    const story = [
      ...SUBMITTED,
      record(1, revision(2)),
      record(1, revision(3, { parents: ["r1"] })),
      submit(1, "r2"),
      submit(1, "r3"),
    ];
    const both = after(...story, ...votes("r2"), ...votes("r3"), close(80));
    expect(both).toMatchObject({ verified: "r2" });
    expect(both.reviews.map(({ end }) => end?.is ?? null)).toEqual([null, "verified", null]);
  });

  it("is the fold of the story's events", () => {
    expect(told(...VERIFIED).map(({ type }) => type)).toEqual([
      "revision recorded",
      "submitted",
      "vote cast",
      "vote cast",
      "vote cast",
      "review closed",
    ]);
  });
});

describe("lengths", () => {
  it.each<[string, EntryCommand, string]>([
    [
      "a reason under the policy's 20 characters",
      { ...vote(1, rosa), reason: "too short" } as EntryCommand,
      "text-shortest",
    ],
    [
      "spaces do not make a reason longer",
      { ...vote(1, rosa), reason: `too short${" ".repeat(30)}` } as EntryCommand,
      "text-shortest",
    ],
    [
      "a text over 5,000 characters",
      { ...vote(1, rosa), reason: "x".repeat(5001) } as EntryCommand,
      "text-longest",
    ],
    ["an answer under 10", { ...answer(1, author, "rosa"), answer: "No." } as EntryCommand, "text-shortest"],
  ])("refuse %s", (_, command, rule) => {
    expect(when([...SUBMITTED, vote(1, rosa, "oppose")], command)).toBe(rule);
  });

  it("name what was received and how long it was", () => {
    expect(refusal(SUBMITTED, { ...vote(1, mina), reason: "No." } as EntryCommand)).toEqual({
      field: "reason",
      rule: "text-shortest",
      received: "No.",
      params: { shortest: 20, length: 3 },
    });
    expect(LONG.length).toBeGreaterThan(50);
  });
});
