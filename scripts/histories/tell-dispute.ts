import type { ActingMember } from "#core/members/member";
import type { Claim, Consequence, Ruling } from "#core/review/entry-event";
import { DEFAULT_POLICY } from "#core/review/policy";
import type { Random } from "../../seed/render/random.ts";
import { APPEAL_VOTES, APPEALS, DISPUTES, type Dispute } from "./disputes.ts";
import type { Step } from "./story.ts";
import type { Setting } from "./vote-in-story.ts";
import { fill } from "./write-words.ts";

/** A challenge under way: the token that it is known by, what it says and how it can be decided. */
export type Raised = { readonly id: string; readonly dispute: Dispute; readonly step: Step };

export function challenges(
  { subject, random }: Setting,
  by: ActingMember,
  after: number,
  claims: readonly Claim[],
): Raised {
  const dispute = random.pick(DISPUTES.filter(({ claim }) => claims.includes(claim)));
  const id = drawId(random);
  const { claim } = dispute;
  const citations = subject.content.citations.slice(0, 1);
  const evidence = { text: fill(dispute.evidence, subject), citations, photographs: [] };
  const give = (at: string, revision: string) =>
    ({ type: "challenge", at, by, challenge: id, revision, claim, evidence }) as const;
  return { id, dispute, step: { is: "command", after, give } };
}

export function decides(
  { subject }: Setting,
  by: ActingMember,
  after: number,
  { id, dispute }: Raised,
  ruling: Ruling,
  follows: (newest: string) => Consequence,
): Step {
  const reason = fill(ruling === "dismissed" ? dispute.dismissed : dispute.upheld, subject);
  return {
    is: "command",
    after,
    give: (at, newest) => ({
      type: "decide a challenge",
      at,
      by,
      challenge: id,
      ruling,
      reason,
      consequence: follows(newest),
      policy: DEFAULT_POLICY,
    }),
  };
}

export const appeals = ({ random }: Setting, by: ActingMember, after: number, { id }: Raised): Step => {
  const reason = random.pick(APPEALS);
  return { is: "command", after, give: (at) => ({ type: "appeal", at, by, challenge: id, reason }) };
};

/** Moderators' votes on an appeal, a day apart: where they differ, the first who differs comes first. */
export function appealVotes(
  by: readonly ActingMember[],
  after: number,
  { id }: Raised,
  choices: readonly ("let stand" | "overturn")[],
): readonly Step[] {
  const given = { "let stand": 0, overturn: 0 };
  return choices.flatMap((choice, i): readonly Step[] => {
    const voter = by[i];
    const reason = APPEAL_VOTES[choice][given[choice]++];
    if (!voter || reason === undefined) throw new Error(`appeal: nobody is left to vote "${choice}".`);
    return [
      {
        is: "command",
        after: after + 24 * i,
        give: (at) => ({ type: "vote on an appeal", at, by: voter, challenge: id, choice, reason }),
      },
    ];
  });
}

/** A token as a form would have made it, drawn from the seed. */
export function drawId(random: Random): string {
  const hex = Array.from({ length: 4 }, () => random.seed().toString(16).padStart(8, "0")).join("");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20)}`;
}
