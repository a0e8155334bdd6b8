import type { Choice, NotCounted, Vote } from "./vote.ts";

/** How a review stands. */
export type Tally = {
  readonly support: number;
  readonly oppose: number;
  readonly abstain: number;
  /** Votes that count, abstentions among them. */
  readonly counted: number;
  readonly notCounted: readonly { readonly voter: string; readonly rule: NotCounted }[];
  /** Voters whose counted opposition nobody has answered. */
  readonly unanswered: readonly string[];
};

/** A vote as a review shows it: the latest of its voter, with what counts it out and who answered. */
export type WeighedVote = {
  readonly vote: Vote;
  /** Null when it counts. */
  readonly notCounted: NotCounted | null;
  readonly earlier: readonly Vote[];
  readonly answers: readonly {
    readonly by: string;
    readonly name: string;
    readonly text: string;
    readonly at: string;
  }[];
};

/** Counts the votes that count. */
export function tallyOf(weighed: readonly WeighedVote[]): Tally {
  const counted = weighed.filter(({ notCounted }) => notCounted === null);
  const of = (choice: Choice) => counted.filter(({ vote }) => vote.choice === choice);
  return {
    support: of("support").length,
    oppose: of("oppose").length,
    abstain: of("abstain").length,
    counted: counted.length,
    notCounted: weighed.flatMap(({ vote, notCounted: rule }) =>
      rule === null ? [] : [{ voter: vote.voter.id, rule }],
    ),
    unanswered: of("oppose").flatMap(({ vote, answers }) => (answers.length === 0 ? [vote.voter.id] : [])),
  };
}
