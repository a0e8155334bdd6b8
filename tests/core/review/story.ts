import type { FieldError } from "#core/field-error";
import type { ActingMember, Interest, Role } from "#core/members/member";
import { whatIsMissing } from "#core/review/close";
import type { EntryCommand } from "#core/review/command";
import { decide } from "#core/review/decide";
import type { EntryEvent, RecordedRevision } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import { evolve, historyOf } from "#core/review/evolve";
import { DEFAULT_POLICY } from "#core/review/policy";
import type { Choice } from "#core/review/vote";

/** The moment so many hours after the story began. */
export const at = (hours: number): string => new Date(Date.UTC(2027, 0, 1) + hours * 3_600_000).toISOString();

type Particulars = {
  readonly roles?: readonly Role[];
  readonly interests?: readonly Interest[];
  readonly suspended?: boolean;
};

/** A member who is a reviewer of metalwork if a reviewer at all. */
export function member(
  id: string,
  { roles = ["contributor"], interests = [], suspended = false }: Particulars = {},
): ActingMember {
  const fields = roles.includes("reviewer") ? (["metalwork"] as const) : [];
  return { kind: "member", id, name: id.toUpperCase(), roles, fields, interests, suspended };
}

const interestIn = (kind: "maker" | "entry", slug: string): readonly Interest[] => [
  { in: { kind, slug }, stake: "collection", note: "" },
];

export const author = member("author", { roles: ["contributor", "reviewer"] });
export const other = member("other");
export const [rosa, ruth, rolf, rene] = ["rosa", "ruth", "rolf", "rene"].map((id) =>
  member(id, { roles: ["contributor", "reviewer"] }),
) as [ActingMember, ActingMember, ActingMember, ActingMember];
export const collector = member("collector", { roles: ["reviewer"], interests: interestIn("maker", "kell") });
export const owner = member("owner", { roles: ["reviewer"], interests: interestIn("entry", "anchor") });
export const potter: ActingMember = { ...member("potter", { roles: ["reviewer"] }), fields: ["ceramics"] };
export const [mina, moss, mara, milo] = ["mina", "moss", "mara", "milo"].map((id) =>
  member(id, { roles: ["contributor", "reviewer", "moderator"] }),
) as [ActingMember, ActingMember, ActingMember, ActingMember];

/** A revision with all it needs, made from the one before it. */
export function revision(number: number, over: Partial<RecordedRevision> = {}): RecordedRevision {
  return {
    id: `r${number}`,
    entry: "anchor",
    number,
    contentHash: `hash-${number}`,
    parents: number === 1 ? [] : [`r${number - 1}`],
    authors: ["author"],
    field: "metalwork",
    maker: "kell",
    has: { title: true, description: true, photographs: 2, uncredited: 0, impressions: 2, citations: 0 },
    ...over,
  };
}

export const LONG = "This is said at such a length that every rule of a length is content.";

export const record = (hours: number, given: RecordedRevision = revision(1), by = author): EntryCommand => ({
  type: "record a revision",
  at: at(hours),
  by,
  revision: given,
});
export const submit = (hours: number, id = "r1", by = author): EntryCommand => ({
  type: "submit",
  at: at(hours),
  by,
  revision: id,
  policy: DEFAULT_POLICY,
});
export const vote = (
  hours: number,
  by: ActingMember,
  choice: Choice = "support",
  id = "r1",
): EntryCommand => ({
  type: "vote",
  at: at(hours),
  by,
  revision: id,
  choice,
  reason: LONG,
  basis: "compared photographs",
});
export const answer = (hours: number, by: ActingMember, voter: string, id = "r1"): EntryCommand => ({
  type: "answer a vote",
  at: at(hours),
  by,
  revision: id,
  voter,
  answer: LONG,
});
export const close = (hours: number): EntryCommand => ({ type: "close what is over", at: at(hours) });
export const challenge = (hours: number, by = other, id = "c1", of = "r1"): EntryCommand => ({
  type: "challenge",
  at: at(hours),
  by,
  challenge: id,
  revision: of,
  claim: "wrong maker",
  evidence: { text: LONG, citations: [], photographs: [] },
});
type Deciding = Extract<EntryCommand, { type: "decide a challenge" }>;
export const decideIt = (
  hours: number,
  {
    by = mina,
    ruling = "upheld",
    consequence = { kind: "withdrawn" },
    challenge: id = "c1",
  }: Partial<Deciding> = {},
): EntryCommand => ({
  type: "decide a challenge",
  at: at(hours),
  by,
  challenge: id,
  ruling,
  reason: LONG,
  consequence,
  policy: DEFAULT_POLICY,
});
export const appeal = (hours: number, by = author, id = "c1"): EntryCommand => ({
  type: "appeal",
  at: at(hours),
  by,
  challenge: id,
  reason: LONG,
});
export const judge = (
  hours: number,
  by: ActingMember,
  choice: "let stand" | "overturn",
  id = "c1",
): EntryCommand => ({
  type: "vote on an appeal",
  at: at(hours),
  by,
  challenge: id,
  choice,
  reason: LONG,
});

/** The first revision, under review since hour 0. */
export const SUBMITTED = [record(0), submit(0)];
/** Verified at hour 72 by Rosa, Ruth and Rolf. */
export const VERIFIED = [...SUBMITTED, vote(1, rosa), vote(2, ruth), vote(3, rolf), close(72)];

/** The events of a story in which nothing is refused. */
export function told(...commands: readonly EntryCommand[]): readonly EntryEvent[] {
  const events: EntryEvent[] = [];
  let history = historyOf([]);
  for (const command of commands) {
    const decided = decide(history, command);
    if (!decided.ok) throw new Error(`${command.type} refused: ${JSON.stringify(decided.error)}`);
    events.push(...decided.value);
    history = decided.value.reduce(evolve, history);
  }
  return events;
}

/** What has become of the entry at the end of a story in which nothing is refused. */
export const after = (...commands: readonly EntryCommand[]): EntryHistory => historyOf(told(...commands));

/** What a command brings after a story: the types of the events that follow, or the rule that refuses it. */
export function when(story: readonly EntryCommand[], command: EntryCommand): readonly string[] | string {
  const decided = decide(after(...story), command);
  return decided.ok ? decided.value.map(({ type }) => type) : decided.error.rule;
}

/** The refusal of a command after a story. */
export function refusal(story: readonly EntryCommand[], command: EntryCommand): FieldError | null {
  const decided = decide(after(...story), command);
  return decided.ok ? null : decided.error;
}

/** The outlook of the latest review at an hour. */
export function outlook(story: readonly EntryCommand[], hours: number) {
  const history = after(...story);
  const review = history.reviews.at(-1);
  if (!review) throw new Error("there is no review");
  return whatIsMissing(review, history, at(hours));
}
