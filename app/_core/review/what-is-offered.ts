import type { FieldError } from "../field-error.ts";
import type { Actor } from "../members/member.ts";
import { type Action, may } from "../permissions.ts";
import type { EntryCommand } from "./command.ts";
import { decide } from "./decide.ts";
import type { Challenge, EntryHistory, Review } from "./entry-history.ts";
import { DEFAULT_POLICY } from "./policy.ts";
import { LENGTHS } from "./refuse.ts";

/** Why an act is not offered; null when it is. */
export type Offer = FieldError | null;

/** A text that no rule of length refuses, to try with; a policy may ask more of a vote than others do. */
const WORDS = ".".repeat(LENGTHS.longest / 2);

/**
 * What a page may offer is what the rules would not refuse: the act is tried on the history as it stands, with words
 * that are long enough, and what comes of it is thrown away.
 */
function tried(
  history: EntryHistory,
  actor: Actor,
  action: Action,
  commandOf: (by: Extract<Actor, { kind: "member" }>) => EntryCommand,
): Offer {
  if (actor.kind !== "member") return { field: "member", rule: "sign-in-first", received: action };
  if (!may(actor, action)) {
    const rule = actor.suspended ? "member-suspended" : "role-needed";
    return { field: "member", rule, received: actor.suspended ? actor.name : actor.roles.join(", ") };
  }
  const decided = decide(history, commandOf(actor));
  return decided.ok ? null : decided.error;
}

export const offersVote = (history: EntryHistory, { revision }: Review, actor: Actor, at: string): Offer =>
  tried(history, actor, "vote", (by) => ({
    type: "vote",
    by,
    at,
    revision,
    choice: "abstain",
    basis: "other",
    reason: WORDS,
  }));

export const offersAnswer = (
  history: EntryHistory,
  { revision }: Review,
  voter: string,
  actor: Actor,
  at: string,
): Offer =>
  tried(history, actor, "answer a vote", (by) => ({
    type: "answer a vote",
    by,
    at,
    revision,
    voter,
    answer: WORDS,
  }));

export const offersWithdrawal = (
  history: EntryHistory,
  { revision }: Review,
  actor: Actor,
  at: string,
): Offer =>
  tried(history, actor, "withdraw a submission", (by) => ({
    type: "withdraw a submission",
    by,
    at,
    revision,
    reason: WORDS,
  }));

export const offersChallenge = (history: EntryHistory, actor: Actor, at: string): Offer =>
  tried(history, actor, "challenge", (by) => ({
    type: "challenge",
    by,
    at,
    challenge: "",
    revision: history.verified ?? "",
    claim: "duplicate",
    evidence: { text: WORDS, citations: [], photographs: [] },
  }));

export const offersDecision = (
  history: EntryHistory,
  { id: challenge }: Challenge,
  actor: Actor,
  at: string,
): Offer =>
  tried(history, actor, "decide a challenge", (by) => ({
    type: "decide a challenge",
    by,
    at,
    challenge,
    ruling: "dismissed",
    reason: WORDS,
    consequence: { kind: "no change" },
    policy: DEFAULT_POLICY,
  }));

export const offersAppeal = (
  history: EntryHistory,
  { id: challenge }: Challenge,
  actor: Actor,
  at: string,
): Offer => tried(history, actor, "appeal", (by) => ({ type: "appeal", by, at, challenge, reason: WORDS }));

export const offersAppealVote = (
  history: EntryHistory,
  { id: challenge }: Challenge,
  actor: Actor,
  at: string,
): Offer =>
  tried(history, actor, "vote on an appeal", (by) => ({
    type: "vote on an appeal",
    by,
    at,
    challenge,
    choice: "let stand",
    reason: WORDS,
  }));
