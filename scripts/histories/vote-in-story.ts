import type { ActingMember } from "#core/members/member";
import type { Choice } from "#core/review/vote";
import type { Random } from "../../seed/render/random.ts";
import { OBJECTIONS } from "./objections.ts";
import { REASONS, type Reason } from "./reasons.ts";
import type { Step, Subject } from "./story.ts";
import { type Chooser, fill } from "./write-words.ts";

export type Setting = {
  readonly subject: Subject;
  readonly random: Random;
  readonly choose: Chooser;
  /** Sentences that the entry's story has used. */
  readonly taken: Set<string>;
};

type Kind = Exclude<Choice, "oppose"> | "apart" | "changed";

/** Shortest reason that a vote needs. */
const SHORTEST = 20;

/** A vote in support, an abstention, one that does not count or one by who comes round. */
export function votes(setting: Setting, by: ActingMember, after: number, kind: Kind = "support"): Step {
  const reason = setting.choose<Reason>(REASONS[kind], setting.subject, setting.taken);
  return cast(setting, by, after, kind === "abstain" ? "abstain" : "support", reason);
}

/** An opposing vote, answered some hours later where somebody answers it. */
export function opposes(
  setting: Setting,
  by: ActingMember,
  after: number,
  answered: { readonly by: ActingMember; readonly after: number } | null,
): readonly Step[] {
  const objection = setting.choose(OBJECTIONS, setting.subject, setting.taken);
  const opposed = cast(setting, by, after, "oppose", objection);
  if (!answered) return [opposed];
  const answer = fill(objection.answer, setting.subject);
  return [
    opposed,
    {
      is: "command",
      after: answered.after,
      give: (at, revision) => ({
        type: "answer a vote",
        at,
        by: answered.by,
        revision,
        voter: by.id,
        answer,
      }),
    },
  ];
}

/** Somebody looks, and what is over is closed. */
export const closes = (after: number): Step => ({
  is: "command",
  after,
  give: (at) => ({ type: "close what is over", at }),
});

function cast(
  { subject }: Setting,
  by: ActingMember,
  after: number,
  choice: Choice,
  { text, basis }: Reason,
): Step {
  const reason = fill(text, subject);
  if (reason.length < SHORTEST) throw new Error(`reason: it is too short. Received "${reason}".`);
  return {
    is: "command",
    after,
    give: (at, revision) => ({ type: "vote", at, by, revision, choice, reason, basis }),
  };
}
