/**
 * One link of a trail as it is kept and as it is downloaded. `hash` is SHA-256, hexadecimal, over the canonical JSON
 * (RFC 8785) of all other fields; `previous` is the hash of the link before, and null in the first.
 */
export type Link = {
  /** What the trail is of: `entry:<id>`, or `members` for acts of moderation that concern no entry. */
  readonly trail: string;
  /** From 1, without gaps. */
  readonly number: number;
  readonly type: string;
  readonly at: string;
  readonly by: { readonly id: string | null; readonly name: string };
  /** All other fields of the event. */
  readonly payload: unknown;
  readonly previous: string | null;
  readonly hash: string;
};
