import { readCitations } from "../drafts/read-citations.ts";
import type { Citation } from "../entries/citation.ts";
import type { FieldError } from "../field-error.ts";
import { slugInAddress } from "../questions/parse-proposal.ts";
import { type Typed, TypedReader } from "../questions/typed-text.ts";
import { fail, ok, type Result } from "../result.ts";
import {
  CLAIMS,
  type Claim,
  type Consequence,
  HIDING_GROUNDS,
  type HidingGround,
  RULINGS,
  type Ruling,
} from "./entry-event.ts";
import { BASES, type Basis, CHOICES, type Choice } from "./vote.ts";

/** What can be done to an entry by a form, as its address names it. */
export const ENTRY_ACTS = [
  "vote",
  "answer",
  "withdraw",
  "challenge",
  "decide",
  "appeal",
  "appeal-vote",
  "hide",
  "merge",
  "lock",
  "undo",
] as const;
export type EntryAct = (typeof ENTRY_ACTS)[number];

const CONSEQUENCES = ["no change", "withdrawn", "new revision to review", "superseded"] as const;
const APPEAL_CHOICES = ["let stand", "overturn"] as const;
const HIDDEN_KINDS = ["photograph", "text"] as const;

type Read<T> = Result<T, readonly FieldError[]>;

/** Reads texts out of a form; how long they must be is up to the rules of the review, but nothing is read endlessly. */
class ActReader extends TypedReader {
  constructor(readonly given: Typed) {
    super(given);
  }
  id(field: string): string {
    return this.line(field, { shortest: 1, longest: 64 });
  }
  words(field: string): string {
    return this.text(field, { longest: 5000 });
  }
  entry(field: string): string {
    const typed = this.given[field] ?? "";
    const slug = slugInAddress(typed);
    if (slug === null) this.refuse(field, "entry-address", typed);
    return slug ?? "";
  }
  give<T>(value: T | null): Read<T> {
    return this.errors.length > 0 || value === null ? fail(this.errors) : ok(value);
  }
}

export type TypedVote = { revision: string; choice: Choice; basis: Basis; reason: string };

export function parseVote(typed: Typed): Read<TypedVote> {
  const read = new ActReader(typed);
  const [revision, reason] = [read.id("revision"), read.words("reason")];
  const [choice, basis] = [read.oneOf("choice", CHOICES), read.oneOf("basis", BASES)];
  return read.give(choice && basis && { revision, choice, basis, reason });
}

export function parseAnswer(typed: Typed): Read<{ revision: string; voter: string; answer: string }> {
  const read = new ActReader(typed);
  return read.give({ revision: read.id("revision"), voter: read.id("voter"), answer: read.words("answer") });
}

export function parseWithdrawal(typed: Typed): Read<{ revision: string; reason: string }> {
  const read = new ActReader(typed);
  return read.give({ revision: read.id("revision"), reason: read.words("reason") });
}

export type TypedChallenge = {
  revision: string;
  claim: Claim;
  text: string;
  citations: readonly Citation[];
};

export function parseChallenge(typed: Typed): Read<TypedChallenge> {
  const read = new ActReader(typed);
  const revision = read.id("revision");
  const claim = read.oneOf("claim", CLAIMS);
  const text = read.words("evidence");
  const citations = readCitations(read, typed);
  return read.give(claim && { revision, claim, text, citations });
}

export type TypedDecision = { challenge: string; ruling: Ruling; reason: string; consequence: Consequence };

export function parseDecision(typed: Typed): Read<TypedDecision> {
  const read = new ActReader(typed);
  const challenge = read.id("challenge");
  const ruling = read.oneOf("ruling", RULINGS);
  const kind = read.oneOf("consequence", CONSEQUENCES);
  const consequence = kind && consequenceFrom(read, kind);
  const reason = read.words("reason");
  return read.give(ruling && consequence && { challenge, ruling, reason, consequence });
}

function consequenceFrom(read: ActReader, kind: (typeof CONSEQUENCES)[number]): Consequence {
  switch (kind) {
    case "no change":
    case "withdrawn":
      return { kind };
    case "new revision to review":
      return { kind, revision: read.id("revision") };
    case "superseded":
      return { kind, entry: read.entry("into") };
  }
}

export function parseAppeal(typed: Typed): Read<{ challenge: string; reason: string }> {
  const read = new ActReader(typed);
  return read.give({ challenge: read.id("challenge"), reason: read.words("reason") });
}

export type TypedAppealVote = {
  challenge: string;
  choice: (typeof APPEAL_CHOICES)[number];
  reason: string;
};

export function parseAppealVote(typed: Typed): Read<TypedAppealVote> {
  const read = new ActReader(typed);
  const challenge = read.id("challenge");
  const choice = read.oneOf("choice", APPEAL_CHOICES);
  const reason = read.words("reason");
  return read.give(choice && { challenge, choice, reason });
}

export type TypedHiding = {
  what: { kind: "photograph"; photograph: string } | { kind: "text"; revision: string; field: string };
  ground: HidingGround;
  reason: string;
};

export function parseHiding(typed: Typed): Read<TypedHiding> {
  const read = new ActReader(typed);
  const kind = read.oneOf("what", HIDDEN_KINDS);
  const ground = read.oneOf("ground", HIDING_GROUNDS);
  const reason = read.words("reason");
  const what =
    kind === "photograph"
      ? { kind, photograph: read.id("photograph") }
      : { kind: "text" as const, revision: read.id("revision"), field: read.id("field") };
  return read.give(kind && ground && { what, ground, reason });
}

export function parseMerge(typed: Typed): Read<{ into: string; reason: string }> {
  const read = new ActReader(typed);
  return read.give({ into: read.entry("into"), reason: read.words("reason") });
}

/** Reads why an entry is locked, or an act undone. */
export function parseReason(typed: Typed): Read<{ reason: string }> {
  const read = new ActReader(typed);
  return read.give({ reason: read.words("reason") });
}
