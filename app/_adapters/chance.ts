import { createHash, randomBytes, timingSafeEqual } from "node:crypto";
import type { Clock, Keys, Randomness } from "../_usecases/ports.ts";

export const systemClock: Clock = { now: () => new Date() };

/** 128 bits, in letters that are safe in an address. */
export const systemRandomness: Randomness = { token: () => randomBytes(16).toString("base64url") };

/** SHA-256 of a text, hexadecimal. */
export const sha256OfText = (text: string): string => createHash("sha256").update(text).digest("hex");

/** 256 bits each. Hashes are compared, not keys, and in a time that tells nothing of where they differ. */
export const systemKeys: Keys = {
  make() {
    const key = randomBytes(32).toString("base64url");
    return { key, hash: sha256OfText(key) };
  },
  opens(key, hash) {
    const given = Buffer.from(sha256OfText(key));
    const wanted = Buffer.from(hash);
    return given.length === wanted.length && timingSafeEqual(given, wanted);
  },
  hashOf: sha256OfText,
};
