import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { acceptedAnswer, decide, whyNoEntry } from "#core/questions/decide";
import { evolve, questionOf, UNASKED } from "#core/questions/evolve";
import {
  type Answer,
  BASES,
  MOST_PROPOSALS,
  type Proposed,
  type Question,
  type QuestionCommand,
  type QuestionEvent,
} from "#core/questions/question";

const at = "2026-11-25T09:00:00.000Z";
const published: QuestionEvent = { type: "published", at, title: "A mark", text: "On a dish.", name: "Ansa" };
const proposed = (proposal: number, answer: Answer = words("Rook")): QuestionEvent => ({
  type: "proposed",
  at,
  proposal,
  ...said(answer),
});
const said = (answer: Answer): Proposed => ({
  answer,
  reasons: "The same device and the same frame.",
  basis: "compared photographs",
  name: "Bram",
});
const words = (maker: string): Answer => ({ kind: "words", maker, mark: "a bird", period: "" });
const entry = (slug: string): Answer => ({ kind: "entry", entry: slug });
const accepted = (proposal: number): QuestionEvent => ({ type: "accepted", at, proposal });
const takenBack = (proposal: number): QuestionEvent => ({ type: "acceptance taken back", at, proposal });
const declined = (proposal: number, reason: string): QuestionEvent => ({
  type: "declined",
  at,
  proposal,
  reason,
});
const made = (slug: string): QuestionEvent => ({ type: "made an entry", at, entry: slug });
const withdrawn: QuestionEvent = { type: "withdrawn", at };

/** What happens when a command comes after some events: the events that follow, or the rule that refuses it. */
function when(given: readonly QuestionEvent[], command: QuestionCommand): readonly QuestionEvent[] | string {
  const decided = decide(questionOf(given), command);
  return decided.ok ? decided.value : decided.error.rule;
}

const TWO = [published, proposed(1), proposed(2, entry("anchor"))];

describe("given a question", () => {
  it.each<[string, readonly QuestionEvent[], QuestionCommand, readonly QuestionEvent[] | string]>([
    [
      "that nobody asked: publishing asks it",
      [],
      { type: "publish", at, title: "A mark", text: "On a dish.", name: "Ansa" },
      [published],
    ],
    [
      "that is asked: publishing it again does nothing",
      [published],
      { type: "publish", at, title: "Another", text: "On a jug.", name: "Ansa" },
      [],
    ],
    ["that nobody asked: there is nothing to withdraw", [], { type: "withdraw", at }, "question-unknown"],
    [
      "that is open: a proposal gets the next number",
      TWO,
      { type: "propose", at, ...said(words("Kell")) },
      [proposed(3, words("Kell"))],
    ],
    [
      "with the very same proposal: proposing it again does nothing",
      TWO,
      { type: "propose", at, ...said(entry("anchor")) },
      [],
    ],
    [
      "with as many proposals as it takes: one more is refused",
      [published, ...Array.from({ length: MOST_PROPOSALS }, (_, i) => proposed(i + 1, words(`${i}`)))],
      { type: "propose", at, ...said(words("Kell")) },
      "proposals-many",
    ],
    [
      "that is answered: others may still propose",
      [...TWO, accepted(1)],
      { type: "propose", at, ...said(words("Kell")) },
      [proposed(3, words("Kell"))],
    ],
    ["that is open: a proposal is accepted", TWO, { type: "accept", at, proposal: 2 }, [accepted(2)]],
    [
      "with an accepted proposal: accepting it again does nothing",
      [...TWO, accepted(2)],
      { type: "accept", at, proposal: 2 },
      [],
    ],
    [
      "with an accepted proposal: accepting another takes the first acceptance back",
      [...TWO, accepted(2)],
      { type: "accept", at, proposal: 1 },
      [takenBack(2), accepted(1)],
    ],
    [
      "without that proposal: it can't be accepted",
      TWO,
      { type: "accept", at, proposal: 3 },
      "proposal-unknown",
    ],
    [
      "with an accepted proposal: the acceptance is taken back",
      [...TWO, accepted(2)],
      { type: "take acceptance back", at, proposal: 2 },
      [takenBack(2)],
    ],
    [
      "with another proposal accepted: taking back does nothing",
      [...TWO, accepted(2)],
      { type: "take acceptance back", at, proposal: 1 },
      [],
    ],
    [
      "with an accepted proposal: declining it takes the acceptance back first",
      [...TWO, accepted(2)],
      { type: "decline", at, proposal: 2, reason: "Ours has no rope." },
      [takenBack(2), declined(2, "Ours has no rope.")],
    ],
    [
      "with a declined proposal: declining it for the same reason does nothing",
      [...TWO, declined(1, "No.")],
      { type: "decline", at, proposal: 1, reason: "No." },
      [],
    ],
    [
      "with a declined proposal: it can still be accepted",
      [...TWO, declined(1, "No.")],
      { type: "accept", at, proposal: 1 },
      [accepted(1)],
    ],
    ["that is open: an entry can be made", TWO, { type: "make an entry", at, entry: "bird" }, [made("bird")]],
    [
      "answered in words: an entry can be made",
      [...TWO, accepted(1)],
      { type: "make an entry", at, entry: "bird" },
      [made("bird")],
    ],
    [
      "answered by an entry: no second one is made",
      [...TWO, accepted(2)],
      { type: "make an entry", at, entry: "bird" },
      "answered-by-entry",
    ],
    [
      "of which an entry was made: the same again does nothing",
      [...TWO, made("bird")],
      { type: "make an entry", at, entry: "bird" },
      [],
    ],
    [
      "of which an entry was made: another is refused",
      [...TWO, made("bird")],
      { type: "make an entry", at, entry: "bird-2" },
      "entry-made-already",
    ],
    ["that is answered: it can be withdrawn", [...TWO, accepted(1)], { type: "withdraw", at }, [withdrawn]],
    [
      "that is withdrawn: withdrawing it again does nothing",
      [...TWO, withdrawn],
      { type: "withdraw", at },
      [],
    ],
    [
      "that is withdrawn: nothing else can be done",
      [...TWO, withdrawn],
      { type: "accept", at, proposal: 1 },
      "question-withdrawn",
    ],
  ])("%s", (_, given, command, expected) => {
    expect(when(given, command)).toEqual(expected);
  });
});

const answers = fc.oneof(
  fc.constantFrom("anchor", "tower").map(entry),
  fc.constantFrom("Rook", "Kell", "").map(words),
);
const numbers = fc.integer({ min: 0, max: 5 });
const commands: fc.Arbitrary<QuestionCommand> = fc.oneof(
  fc.constant<QuestionCommand>({ type: "publish", at, title: "A mark", text: "On a dish.", name: "Ansa" }),
  fc
    .record({ answer: answers, basis: fc.constantFrom(...BASES) })
    .map(({ answer, basis }): QuestionCommand => ({ type: "propose", at, ...said(answer), basis })),
  numbers.map((proposal): QuestionCommand => ({ type: "accept", at, proposal })),
  numbers.map((proposal): QuestionCommand => ({ type: "take acceptance back", at, proposal })),
  fc
    .record({ proposal: numbers, reason: fc.constantFrom("No.", "Never.") })
    .map(({ proposal, reason }): QuestionCommand => ({ type: "decline", at, proposal, reason })),
  fc
    .constantFrom("bird", "bird-2")
    .map((slug): QuestionCommand => ({ type: "make an entry", at, entry: slug })),
  fc.constant<QuestionCommand>({ type: "withdraw", at }),
);

/** Gives one command after another; those that are refused change nothing. */
function run(list: readonly QuestionCommand[]): { question: Question; events: readonly QuestionEvent[] } {
  const events: QuestionEvent[] = [];
  let question = UNASKED;
  for (const command of list) {
    const decided = decide(question, command);
    if (!decided.ok) continue;
    events.push(...decided.value);
    question = decided.value.reduce(evolve, question);
  }
  return { question, events };
}

describe("whatever the order of commands", () => {
  const lists = fc.array(commands, { maxLength: 40 });

  it("the question is what its events amount to", () => {
    fc.assert(
      fc.property(lists, (list) => {
        const { question, events } = run(list);
        expect(questionOf(events)).toEqual(question);
      }),
    );
  });

  it("a command given twice adds nothing the second time", () => {
    fc.assert(
      fc.property(lists, commands, (list, command) => {
        const { question } = run(list);
        const first = decide(question, command);
        if (!first.ok) return;
        const second = decide(first.value.reduce(evolve, question), command);
        expect(second).toEqual({ ok: true, value: [] });
      }),
    );
  });

  it("it is answered exactly when one proposal is accepted, and never more than one is", () => {
    fc.assert(
      fc.property(lists, (list) => {
        const { question } = run(list);
        if (question.state === "unasked" || question.state === "withdrawn") return;
        const taken = question.proposals.filter(({ standing }) => standing.is === "accepted");
        expect(taken.length).toBe(question.state === "answered" ? 1 : 0);
        expect(acceptedAnswer(question)).toEqual(taken[0]?.answer ?? null);
        expect(question.proposals.map(({ number }) => number)).toEqual(
          question.proposals.map((_, i) => i + 1),
        );
      }),
    );
  });

  it("nothing follows a withdrawal, and at most one entry is made", () => {
    fc.assert(
      fc.property(lists, (list) => {
        const { question, events } = run(list);
        const end = events.findIndex(({ type }) => type === "withdrawn");
        expect(end === -1 || end === events.length - 1).toBe(true);
        expect(events.filter(({ type }) => type === "made an entry").length).toBeLessThanOrEqual(1);
        expect(whyNoEntry(question) === null || question.state !== "open" || question.entry !== null).toBe(
          true,
        );
      }),
    );
  });
});
