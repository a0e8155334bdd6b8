import { createHash, randomBytes } from "node:crypto";
import type { Clock, Randomness } from "../_usecases/ports.ts";

export const systemClock: Clock = { now: () => new Date() };

/** 128 bits, in letters that are safe in an address. */
export const systemRandomness: Randomness = { token: () => randomBytes(16).toString("base64url") };

/** SHA-256 of a text, hexadecimal. */
export const sha256OfText = (text: string): string => createHash("sha256").update(text).digest("hex");
