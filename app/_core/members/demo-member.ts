import type { Field } from "../entries/vocabulary.ts";
import type { Interest, Role } from "./member.ts";

/** One of the demo's ready accounts, as seed/members.json lists them. */
export type DemoMember = {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly about: string;
  /** Day on which the account was made, YYYY-MM-DD. */
  readonly joined: string;
  readonly roles: readonly Exclude<Role, "reader" | "contributor">[];
  readonly fields: readonly Field[];
  readonly interests: readonly Interest[];
};
