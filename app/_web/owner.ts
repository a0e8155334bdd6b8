import { randomBytes } from "node:crypto";
import { cookies } from "next/headers";
import { sha256OfText } from "#adapters/chance";

const NAME = "countermark-owner";
const YEAR = 365 * 24 * 60 * 60;

/** The hash of this browser's owner cookie; null when it has none. Only the hash is ever stored. */
export async function ownerHash(): Promise<string | null> {
  const value = (await cookies()).get(NAME)?.value;
  return value && /^[\w-]{43}$/.test(value) ? sha256OfText(value) : null;
}

/** The same, giving the browser an owner cookie when it has none. */
export async function ensureOwnerHash(secure: boolean): Promise<string> {
  const known = await ownerHash();
  if (known) return known;
  const value = randomBytes(32).toString("base64url");
  (await cookies()).set(NAME, value, { httpOnly: true, sameSite: "lax", secure, path: "/", maxAge: YEAR });
  return sha256OfText(value);
}
