import type { FieldError } from "../field-error.ts";

/** Failed sign-ins within this time count. */
export const SIGN_IN_WINDOW_MS = 15 * 60 * 1000;
/** Failures that one e-mail address, and one client, may have in that time. */
export const SIGN_IN_LIMITS = { email: 10, client: 30 } as const;

/**
 * Is this one too many? Moments in milliseconds, this attempt's own among them.
 * @param received the e-mail address as it was typed
 * @returns the refusal, with the minutes to wait; null when it may be tried
 */
export function signInTooOften(
  byEmail: readonly number[],
  byClient: readonly number[],
  now: number,
  received: string,
): FieldError | null {
  const wait = Math.max(
    waitFor(byEmail, SIGN_IN_LIMITS.email, now),
    waitFor(byClient, SIGN_IN_LIMITS.client, now),
  );
  if (wait <= 0) return null;
  return {
    field: "email",
    rule: "sign-in-too-often",
    received,
    params: { minutes: Math.ceil(wait / 60_000) },
  };
}

/** Until so few are left that one more may be tried. */
function waitFor(moments: readonly number[], most: number, now: number): number {
  const counted = moments.filter((at) => at > now - SIGN_IN_WINDOW_MS).sort((a, b) => a - b);
  if (counted.length <= most) return 0;
  const leaves = counted.at(-most);
  return leaves === undefined ? 0 : leaves + SIGN_IN_WINDOW_MS - now;
}
