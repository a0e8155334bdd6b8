import type { ActingMember } from "../members/member.ts";
import type {
  Claim,
  Consequence,
  Evidence,
  Hidden,
  HidingGround,
  RecordedRevision,
  Ruling,
} from "./entry-event.ts";
import type { ReviewPolicy } from "./policy.ts";
import type { Basis, Choice } from "./vote.ts";

/**
 * What can be asked of an entry. `at` is now, ISO 8601; ids of challenges and acts are given by whoever asks, so that
 * the same command twice is known as the same.
 */
export type EntryCommand = { readonly at: string } & (
  | {
      readonly type: "record a revision";
      readonly by: ActingMember | { readonly importer: string };
      readonly revision: RecordedRevision;
    }
  | {
      readonly type: "submit";
      readonly by: ActingMember | { readonly importer: string };
      readonly revision: string;
      readonly policy: ReviewPolicy;
    }
  | {
      readonly type: "vote";
      readonly by: ActingMember;
      readonly revision: string;
      readonly choice: Choice;
      readonly reason: string;
      readonly basis: Basis;
    }
  | {
      readonly type: "answer a vote";
      readonly by: ActingMember;
      readonly revision: string;
      readonly voter: string;
      readonly answer: string;
    }
  | {
      readonly type: "withdraw a submission";
      readonly by: ActingMember;
      readonly revision: string;
      readonly reason: string;
    }
  /** Closes the review when it is time; given by the program alone, as often as it likes. */
  | { readonly type: "close what is over" }
  | {
      readonly type: "challenge";
      readonly by: ActingMember;
      readonly challenge: string;
      readonly revision: string;
      readonly claim: Claim;
      readonly evidence: Evidence;
    }
  | {
      readonly type: "decide a challenge";
      readonly by: ActingMember;
      readonly challenge: string;
      readonly ruling: Ruling;
      readonly reason: string;
      readonly consequence: Consequence;
      /** The policy of the review that a consequence begins. */
      readonly policy: ReviewPolicy;
    }
  | {
      readonly type: "appeal";
      readonly by: ActingMember;
      readonly challenge: string;
      readonly reason: string;
    }
  | {
      readonly type: "vote on an appeal";
      readonly by: ActingMember;
      readonly challenge: string;
      readonly choice: "let stand" | "overturn";
      readonly reason: string;
    }
  | {
      readonly type: "hide content";
      readonly by: ActingMember;
      readonly act: string;
      readonly what: Hidden;
      readonly ground: HidingGround;
      readonly reason: string;
    }
  | {
      readonly type: "merge";
      readonly by: ActingMember;
      readonly act: string;
      readonly into: string;
      readonly reason: string;
    }
  | { readonly type: "lock"; readonly by: ActingMember; readonly act: string; readonly reason: string }
  | { readonly type: "undo an act"; readonly by: ActingMember; readonly act: string; readonly reason: string }
);
