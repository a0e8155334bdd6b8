import type { Actor, Role } from "./members/member.ts";

const MEMBERS: readonly Role[] = ["contributor", "reviewer", "moderator", "administrator"];
const MODERATORS: readonly Role[] = ["moderator", "administrator"];

/**
 * The one table of who may do what. It says what a role allows; what the rules of a review or a decision ask besides
 * (not one's own revision, not a party to the challenge) stands in `review` and `moderation`.
 */
const ALLOWED = {
  "look up": ["reader", ...MEMBERS],
  "ask a question": ["reader", ...MEMBERS],
  "change one's account": MEMBERS,
  "declare an interest": MEMBERS,
  "write a draft": MEMBERS,
  "keep an object file": MEMBERS,
  "submit a revision": MEMBERS,
  "withdraw a submission": MEMBERS,
  "answer a vote": MEMBERS,
  vote: ["reviewer"],
  challenge: MEMBERS,
  appeal: MEMBERS,
  "decide a challenge": ["moderator"],
  "vote on an appeal": ["moderator"],
  "hide content": ["moderator"],
  "merge entries": ["moderator"],
  "lock an entry": ["moderator"],
  "undo an act": ["moderator"],
  "suspend a member": MODERATORS,
  "appoint a reviewer": MODERATORS,
  "appoint a moderator": ["administrator"],
  "see agreement": MODERATORS,
  "see the log of moderation": MODERATORS,
} as const satisfies Readonly<Record<string, readonly Role[]>>;

export type Action = keyof typeof ALLOWED;
export const ACTIONS = Object.keys(ALLOWED) as readonly Action[];

/** May this actor do that? A suspended member may do what a reader may; the program itself does nothing by permission. */
export function may(actor: Actor, action: Action): boolean {
  const allowed: readonly Role[] = ALLOWED[action];
  switch (actor.kind) {
    case "system":
      return false;
    case "reader":
      return allowed.includes("reader");
    case "member":
      return actor.suspended
        ? allowed.includes("reader")
        : actor.roles.some((role) => allowed.includes(role));
  }
}
