import { timingSafeEqual } from "node:crypto";
import type { Live } from "./live.ts";

/** Does the request carry the operator's key? Who has it could read the data folder anyway. */
export function isOperator(request: Request, { database }: Pick<Live, "database">): boolean {
  const given = Buffer.from(request.headers.get("authorization") ?? "");
  const wanted = Buffer.from(`Bearer ${database.operatorKey ?? ""}`);
  return database.operatorKey !== null && given.length === wanted.length && timingSafeEqual(given, wanted);
}
