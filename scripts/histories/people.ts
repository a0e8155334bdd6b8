import type { ActingMember } from "#core/members/member";
import type { Random } from "../../seed/render/random.ts";
import type { Subject } from "./story.ts";

/** Who may play which part in the story of one entry; each in an order drawn anew. */
export type Cast = {
  /** Reviewers whose votes count, those who are no moderators first. */
  readonly reviewers: readonly ActingMember[];
  /** How many of them are no moderators. */
  readonly only: number;
  /** Reviewers whose votes do not count, for an interest or for another field. */
  readonly apart: readonly ActingMember[];
  readonly moderators: readonly ActingMember[];
  /** Members who are neither. */
  readonly contributors: readonly ActingMember[];
};

export function castFor({ content }: Subject, members: readonly ActingMember[], random: Random): Cast {
  const drawn = shuffled(members, random);
  const is = (member: ActingMember, role: "reviewer" | "moderator" | "administrator") =>
    member.roles.includes(role);
  const interested = ({ interests }: ActingMember) =>
    interests.some(({ in: { kind, slug } }) => kind === "maker" && slug === content.maker);
  const inField = ({ fields }: ActingMember) => content.field !== null && fields.includes(content.field);
  const reviewers = drawn.filter((each) => is(each, "reviewer"));
  const counted = reviewers.filter((each) => inField(each) && !interested(each));
  const only = counted.filter((each) => !is(each, "moderator"));
  const tied = reviewers.filter((each) => inField(each) && interested(each));
  return {
    reviewers: [...only, ...counted.filter((each) => is(each, "moderator"))],
    only: only.length,
    apart: tied.length > 0 ? tied : reviewers.filter((each) => !inField(each) && !is(each, "moderator")),
    moderators: drawn.filter((each) => is(each, "moderator")),
    contributors: drawn.filter(
      (each) => each.roles.every((role) => role === "contributor") && !interested(each),
    ),
  };
}

export function shuffled<T>(values: readonly T[], random: Random): readonly T[] {
  return values
    .map((value) => ({ value, place: random.next() }))
    .sort((a, b) => a.place - b.place)
    .map(({ value }) => value);
}
