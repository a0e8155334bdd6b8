import { isIPv6 } from "node:net";
import type { FieldError } from "#core/field-error";
import { type Paced, recent, tooOften } from "#core/questions/pace";

const EVERYBODY = "*";
/** Clients remembered at once; beyond that the ones that came first are forgotten. */
const MOST = 10_000;

// On the global object, since a bundler may give each route its own copy of this module.
const held = globalThis as typeof globalThis & { countermarkPace?: Map<string, readonly number[]> };
held.countermarkPace ??= new Map();
const moments = held.countermarkPace;

/**
 * Counts that a client does something now.
 * @returns why it may not, when it did it too often within the hour, or all clients together did; else null
 */
export function countClient(request: Request, what: Paced, now = Date.now()): FieldError | null {
  const own = `${what} ${clientOf(request)}`;
  const all = `${what} ${EVERYBODY}`;
  const refused = tooOften(what, moments.get(own) ?? [], moments.get(all) ?? [], now);
  if (refused) return refused;
  for (const key of [own, all]) {
    const counted = [...recent(moments.get(key) ?? [], now), now];
    // Set anew, so that the order of the map is the order of last use.
    moments.delete(key);
    moments.set(key, counted);
  }
  for (const key of moments.keys()) {
    if (moments.size <= MOST) break;
    moments.delete(key);
  }
  return null;
}

/**
 * Who sends a request, as nearly as can be told: the last address of the header, which the nearest proxy writes, or
 * the server itself where there is none. A client that writes the header itself is still counted among all.
 * One customer commonly holds 2^64 addresses of IPv6: they count as one (RFC 6177, section 2).
 */
export function clientOf(request: Request): string {
  const last = (request.headers.get("x-forwarded-for") ?? "").split(",").at(-1)?.trim() ?? "";
  const address = last.replace(/^::ffff:(?=\d+\.)/i, "");
  if (!isIPv6(address)) return address.slice(0, 64);
  const [head = "", tail] = address.split("::");
  const groups = head === "" ? [] : head.split(":");
  const after = tail === undefined || tail === "" ? [] : tail.split(":");
  const gap =
    tail === undefined ? [] : Array<string>(Math.max(0, 8 - groups.length - after.length)).fill("0");
  return [...groups, ...gap, ...after].slice(0, 4).join(":");
}
