import { hash, verify } from "@node-rs/argon2";
import type { Passwords } from "../_usecases/ports.ts";

/** Argon2id (2), 19 MiB, two passes. Source: OWASP Password Storage Cheat Sheet. */
const OPTIONS = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 };

let nobodys: Promise<string> | undefined;

export const argon2Passwords: Passwords = {
  hash: (password) => hash(password, OPTIONS),
  async verify(kept, password) {
    // Whoever has no password is compared with one that nobody has, so that the time taken tells nothing.
    nobodys ??= hash(crypto.randomUUID(), OPTIONS);
    const same = await verify(kept ?? (await nobodys), password);
    return kept !== null && same;
  },
};
