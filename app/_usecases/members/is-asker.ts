import type { Keys } from "../ports.ts";

/** Who wants to act on a question: by the key of its asker, as a member, or neither. */
export type Asking = { readonly key: string | null; readonly member: string | null };

/** Is it the asker? Who asked while signed in needs no key. */
export function isAsker(
  keys: Keys,
  kept: { readonly keyHash: string; readonly askerMember: string | null },
  { key, member }: Asking,
): boolean {
  const asMember = member !== null && kept.askerMember === member;
  return asMember || (key !== null && keys.opens(key, kept.keyHash));
}
