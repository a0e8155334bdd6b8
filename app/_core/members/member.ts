import type { Field } from "../entries/vocabulary.ts";

/** What a person may be here. Who is not signed in is a reader; every member is a contributor at least. */
const ROLES = ["reader", "contributor", "reviewer", "moderator", "administrator"] as const;
export type Role = (typeof ROLES)[number];

/** Why somebody is not free to judge. */
export const STAKES = ["collection", "trade", "authorship", "other"] as const;
export type Stake = (typeof STAKES)[number];

/** A stake that a member has declared: in a maker, or in one entry's mark. Slugs. */
export type Interest = {
  readonly in: { readonly kind: "maker" | "entry"; readonly slug: string };
  readonly stake: Stake;
  readonly note: string;
};

/** Who acts. `system` is this program, when time alone decides. */
export type Actor =
  | { readonly kind: "reader" }
  | { readonly kind: "system" }
  | {
      readonly kind: "member";
      readonly id: string;
      readonly name: string;
      readonly roles: readonly Role[];
      /** Fields in which the member was appointed reviewer. */
      readonly fields: readonly Field[];
      readonly interests: readonly Interest[];
      readonly suspended: boolean;
    };
export type ActingMember = Extract<Actor, { kind: "member" }>;
