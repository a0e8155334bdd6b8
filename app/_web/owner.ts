import { createHash, randomBytes } from "node:crypto";
import { cookies } from "next/headers";

const NAME = "countermark-owner";
const YEAR = 365 * 24 * 60 * 60;

/** The hash of this browser's owner cookie; null when it has none. Only the hash is ever stored. */
export async function ownerHash(): Promise<string | null> {
  const value = (await cookies()).get(NAME)?.value;
  return value && /^[\w-]{43}$/.test(value) ? hashOf(value) : null;
}

/** The same, giving the browser an owner cookie when it has none. */
export async function ensureOwnerHash(secure: boolean): Promise<string> {
  const known = await ownerHash();
  if (known) return known;
  const value = randomBytes(32).toString("base64url");
  (await cookies()).set(NAME, value, { httpOnly: true, sameSite: "lax", secure, path: "/", maxAge: YEAR });
  return hashOf(value);
}

const hashOf = (value: string) => createHash("sha256").update(value).digest("hex");
