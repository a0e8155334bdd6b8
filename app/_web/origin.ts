import { headers } from "next/headers";
import { readEnvironment } from "./environment.ts";

/**
 * The address at which people reach this host: the one that was set, else the one that was asked for. `x-forwarded-*`
 * is not looked at, since who is no proxy can write it too.
 */
export function originOf(request: Request): string {
  const { origin } = readEnvironment();
  if (origin !== null) return new URL(origin).origin;
  const { protocol, host } = new URL(request.url);
  return `${protocol}//${request.headers.get("host") ?? host}`;
}

/** The same, for the page that is being made. */
export async function addressOfHost(): Promise<string> {
  const { origin } = readEnvironment();
  if (origin !== null) return new URL(origin).origin;
  return `http://${(await headers()).get("host") ?? "localhost"}`;
}
