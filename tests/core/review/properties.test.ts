import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ActingMember } from "#core/members/member";
import type { EntryCommand } from "#core/review/command";
import { decide } from "#core/review/decide";
import type { Consequence, EntryEvent } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import { evolve, historyOf, NO_HISTORY } from "#core/review/evolve";
import {
  answer,
  appeal,
  at,
  author,
  challenge,
  close,
  collector,
  decideIt,
  judge,
  mara,
  mina,
  moss,
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
  VERIFIED,
  vote,
} from "./story.ts";

const MEMBERS = [author, other, rosa, ruth, rolf, rene, collector, owner, potter, mina, moss, mara];
const anybody = fc.constantFrom<ActingMember>(...MEMBERS);
const voter = fc.constantFrom<ActingMember>(rosa, ruth, rolf, rene, author, collector, owner, potter, mina);
const moderator = fc.constantFrom<ActingMember>(mina, moss, mara, author);
const party = fc.constantFrom<ActingMember>(author, other);
const id = fc.constantFrom("r1", "r2", "r3");
const choice = fc.constantFrom("support", "support", "support", "oppose", "abstain" as const);
const raised = fc.constantFrom("c1", "c2");
const act = fc.constantFrom("a1", "a2", "a3");
const reason = "It has to be so.";
const REVISIONS = [
  revision(1),
  revision(2, { authors: ["other", "author"] }),
  revision(3, { parents: ["r1"], authors: ["other"] }),
];

type Move = (hours: number) => EntryCommand;

const consequence = fc.constantFrom<Consequence>(
  { kind: "withdrawn" },
  { kind: "superseded", entry: "anchor-two" },
  { kind: "new revision to review", revision: "r1" },
  { kind: "new revision to review", revision: "r2" },
  { kind: "no change" },
);

/** Everything that can be asked, votes most of all, so that some stories reach the end of a review. */
const move: fc.Arbitrary<Move> = fc.oneof(
  {
    weight: 2,
    arbitrary: fc
      .constantFrom<[(typeof REVISIONS)[number], ActingMember]>(
        ...REVISIONS.map((each, i) => [each, i === 0 ? author : other] as [typeof each, ActingMember]),
      )
      .map(
        ([each, by]): Move =>
          (h) =>
            record(h, each, by),
      ),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(id, party).map(
      ([which, by]): Move =>
        (h) =>
          submit(h, which, by),
    ),
  },
  {
    weight: 12,
    arbitrary: fc.tuple(voter, choice, id).map(
      ([by, how, which]): Move =>
        (h) =>
          vote(h, by, how, which),
    ),
  },
  {
    weight: 4,
    arbitrary: fc.tuple(anybody, voter, id).map(
      ([by, to, which]): Move =>
        (h) =>
          answer(h, by, to.id, which),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(party, id).map(
      ([by, which]): Move =>
        (h) => ({ type: "withdraw a submission", at: at(h), by, revision: which, reason: "" }),
    ),
  },
  { weight: 3, arbitrary: fc.constant<Move>((h) => close(h)) },
  {
    weight: 3,
    arbitrary: fc.tuple(anybody, raised, id).map(
      ([by, which, of]): Move =>
        (h) =>
          challenge(h, by, which, of),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(moderator, raised, consequence, fc.constantFrom("upheld", "dismissed" as const)).map(
      ([by, which, then, ruling]): Move =>
        (h) =>
          decideIt(h, { by, challenge: which, consequence: then, ruling }),
    ),
  },
  {
    weight: 2,
    arbitrary: fc.tuple(party, raised).map(
      ([by, which]): Move =>
        (h) =>
          appeal(h, by, which),
    ),
  },
  {
    weight: 4,
    arbitrary: fc.tuple(moderator, fc.constantFrom("let stand", "overturn" as const), raised).map(
      ([by, how, which]): Move =>
        (h) =>
          judge(h, by, how, which),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(moderator, act, id).map(
      ([by, which, of]): Move =>
        (h) => ({
          type: "hide content",
          at: at(h),
          by,
          act: which,
          what: { kind: "text", revision: of, field: "title", sha256: "a" },
          ground: "rights",
          reason,
        }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(moderator, act, fc.constantFrom("anchor", "anchor-two")).map(
      ([by, which, into]): Move =>
        (h) => ({ type: "merge", at: at(h), by, act: which, into, reason }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(moderator, act).map(
      ([by, which]): Move =>
        (h) => ({ type: "lock", at: at(h), by, act: which, reason }),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(moderator, act).map(
      ([by, which]): Move =>
        (h) => ({ type: "undo an act", at: at(h), by, act: which, reason }),
    ),
  },
);

/** How a story may begin. */
const BEGINNINGS: readonly (readonly EntryCommand[])[] = [
  SUBMITTED,
  [...SUBMITTED, vote(1, rosa), vote(1, ruth)],
  [...SUBMITTED, vote(1, rosa), vote(1, ruth), vote(1, rolf, "oppose"), answer(2, author, "rolf")],
  VERIFIED,
  [...VERIFIED, record(73, revision(2, { authors: ["other", "author"] }), other), submit(73, "r2", other)],
  [...VERIFIED, challenge(73)],
  [...VERIFIED, challenge(73), decideIt(74), appeal(75)],
  [
    ...VERIFIED,
    challenge(73),
    decideIt(74, { ruling: "dismissed", consequence: { kind: "no change" } }),
    appeal(75, other),
  ],
];

/** A beginning, and what was drawn after it, each move some hours after the one before. */
const story: fc.Arbitrary<readonly EntryCommand[]> = fc
  .tuple(
    fc.constantFrom(...BEGINNINGS),
    fc.array(fc.tuple(move, fc.constantFrom(1, 1, 1, 5, 24, 73)), { minLength: 5, maxLength: 60 }),
  )
  .map(([beginning, moves]) => {
    let hours = 80;
    const told = moves.map(([next, wait]) => {
      hours += wait;
      return next(hours);
    });
    return [...beginning, ...told];
  });

type Step = {
  readonly command: EntryCommand;
  readonly before: EntryHistory;
  readonly events: readonly EntryEvent[];
  readonly history: EntryHistory;
};

function steps(commands: readonly EntryCommand[]): readonly Step[] {
  let history = NO_HISTORY;
  return commands.map((command) => {
    const before = history;
    const decided = decide(before, command);
    const events = decided.ok ? decided.value : [];
    history = events.reduce(evolve, before);
    return { command, before, events, history };
  });
}

const RUNS = { numRuns: 1500 };

describe("whatever order of commands", () => {
  it("the state kept step by step equals the fold of all events, also after they were written and read", () => {
    fc.assert(
      fc.property(story, (commands) => {
        const all = steps(commands);
        const events = all.flatMap((step) => step.events);
        expect(historyOf(events)).toEqual(all.at(-1)?.history);
        expect(historyOf(JSON.parse(JSON.stringify(events)))).toEqual(all.at(-1)?.history);
      }),
      RUNS,
    );
  });

  it("the same command again adds nothing, whatever it was", () => {
    const repeated = new Set<string>();
    fc.assert(
      fc.property(story, (commands) => {
        for (const { command, events, history } of steps(commands)) {
          const again = decide(history, command);
          expect(again.ok ? again.value : []).toEqual([]);
          if (events.length > 0) repeated.add(command.type);
        }
      }),
      RUNS,
    );
    expect([...repeated].sort()).toEqual([
      "answer a vote",
      "appeal",
      "challenge",
      "close what is over",
      "decide a challenge",
      "hide content",
      "lock",
      "merge",
      "record a revision",
      "submit",
      "undo an act",
      "vote",
      "vote on an appeal",
      "withdraw a submission",
    ]);
  });

  it("no revision is verified by fewer than three votes of people free to judge it", () => {
    let verified = 0;
    fc.assert(
      fc.property(story, (commands) => {
        const events = steps(commands).flatMap((step) => step.events);
        events.forEach((event, i) => {
          if (event.type !== "review closed" || event.outcome !== "verified" || event.at <= at(80)) return;
          verified += 1;
          const free = freeVotes(events.slice(0, i), event.revision);
          const support = free.filter((each) => each === "support").length;
          const oppose = free.filter((each) => each === "oppose").length;
          expect(free.length).toBeGreaterThanOrEqual(3);
          expect(event.tally).toMatchObject({ counted: free.length, support, oppose });
          expect(support * 3).toBeGreaterThanOrEqual((support + oppose) * 2);
          expect(support).toBeGreaterThan(0);
        });
      }),
      RUNS,
    );
    expect(verified).toBeGreaterThan(50);
  });

  it("an entry shows a verified revision only if its last closing or an overturned decision made it so", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(story, (commands) => {
        for (const { before, events, history } of steps(commands)) {
          seen.add(history.state);
          if (history.verified !== null) expect(history.shown).toBe(history.verified);
          if (history.verified !== before.verified && history.verified !== null)
            expect(
              events.some(
                (e) =>
                  (e.type === "review closed" && e.outcome === "verified") ||
                  (e.type === "appeal decided" && e.outcome === "overturned"),
              ),
            ).toBe(true);
          if (before.locked && !events.some(({ type }) => type === "act undone"))
            expect(
              events.filter(
                ({ type }) => type.startsWith("vote") || type === "review closed" || type === "challenged",
              ),
            ).toEqual([]);
        }
      }),
      RUNS,
    );
    expect([...seen].sort()).toEqual([
      "disputed",
      "draft",
      "not accepted",
      "superseded",
      "under review",
      "verified",
      "withdrawn",
    ]);
  });
});

/**
 * The standing votes in the latest review of a revision of people free to judge it, reckoned from the bare events by
 * names alone: of this cast only Rosa, Ruth, Rolf and Rene, and moderators who did not send it to review, are free.
 */
function freeVotes(events: readonly EntryEvent[], of: string): readonly string[] {
  const begun = events.findLastIndex((event) => event.type === "submitted" && event.revision === of);
  const standing = new Map<string, string>();
  for (const event of events.slice(begun))
    if (event.type === "vote cast" && event.revision === of) standing.set(event.voter.id, event.choice);
  const bound = new Set(["author", "other", "collector", "owner", "potter"]);
  // What was verified before is nobody's change any more: its author is free to judge what others made of it.
  const authors = REVISIONS.find((each) => each.id === of)?.authors ?? [];
  const first = events.some(
    (event) => event.type === "review closed" && event.outcome === "verified" && event.revision === "r1",
  );
  if (first && !authors.includes("author")) bound.delete("author");
  const about = new Map(
    events.flatMap((event) => (event.type === "challenged" ? [[event.challenge, event.revision]] : [])),
  );
  const sent = new Set<string>();
  for (const event of events) {
    if (event.type !== "challenge decided") continue;
    const { consequence } = event;
    const to =
      consequence.kind === "new revision to review" ? consequence.revision : about.get(event.challenge);
    if (to === of) sent.add(event.challenge);
  }
  for (const event of events)
    if (
      (event.type === "challenge decided" || event.type === "appeal vote cast") &&
      sent.has(event.challenge) &&
      event.by.id !== null
    )
      bound.add(event.by.id);
  return [...standing].flatMap(([who, choice]) => (bound.has(who) ? [] : [choice]));
}
