import canonicalize from "canonicalize";
import type { Hash } from "#core/trail/chain";
import { sha256OfText } from "./chance.ts";

/**
 * The canonical JSON of a value (RFC 8785).
 * @throws Error for what is no JSON
 */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError(`A value must be JSON. Received ${typeof value}.`);
  return text;
}

/** SHA-256 over the canonical JSON of a value, hexadecimal. */
export const hashOfValue: Hash = (value) => sha256OfText(canonicalJson(value));
