import fc from "fast-check";
import type { ActingMember } from "#core/members/member";
import type { EntryCommand } from "#core/review/command";
import type { Consequence } from "#core/review/entry-event";
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
export const REVISIONS = [
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
    weight: 8,
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
    weight: 12,
    arbitrary: fc.tuple(id, party).map(
      ([which, by]): Move =>
        (h) =>
          submit(h, which, by),
    ),
  },
  {
    weight: 48,
    arbitrary: fc.tuple(voter, choice, id).map(
      ([by, how, which]): Move =>
        (h) =>
          vote(h, by, how, which),
    ),
  },
  {
    weight: 16,
    arbitrary: fc.tuple(anybody, voter, id).map(
      ([by, to, which]): Move =>
        (h) =>
          answer(h, by, to.id, which),
    ),
  },
  {
    weight: 10,
    arbitrary: fc.tuple(party, id).map(
      ([by, which]): Move =>
        (h) => ({ type: "withdraw a submission", at: at(h), by, revision: which, reason: "" }),
    ),
  },
  { weight: 12, arbitrary: fc.constant<Move>((h) => close(h)) },
  {
    weight: 12,
    arbitrary: fc.tuple(anybody, raised, id).map(
      ([by, which, of]): Move =>
        (h) =>
          challenge(h, by, which, of),
    ),
  },
  {
    weight: 12,
    arbitrary: fc.tuple(moderator, raised, consequence, fc.constantFrom("upheld", "dismissed" as const)).map(
      ([by, which, then, ruling]): Move =>
        (h) =>
          decideIt(h, { by, challenge: which, consequence: then, ruling }),
    ),
  },
  {
    weight: 8,
    arbitrary: fc.tuple(party, raised).map(
      ([by, which]): Move =>
        (h) =>
          appeal(h, by, which),
    ),
  },
  {
    weight: 30,
    arbitrary: fc.tuple(moderator, fc.constantFrom("let stand", "overturn" as const), raised).map(
      ([by, how, which]): Move =>
        (h) =>
          judge(h, by, how, which),
    ),
  },
  {
    weight: 4,
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
    weight: 12,
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
export const story: fc.Arbitrary<readonly EntryCommand[]> = fc
  .tuple(
    fc.constantFrom(...BEGINNINGS),
    fc.array(fc.tuple(move, fc.constantFrom(1, 1, 1, 5, 5, 24, 73, 300)), { minLength: 5, maxLength: 60 }),
  )
  .map(([beginning, moves]) => {
    let hours = 80;
    const told = moves.map(([next, wait]) => {
      hours += wait;
      return next(hours);
    });
    return [...beginning, ...told];
  });
