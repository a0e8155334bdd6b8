import { randomUUID } from "node:crypto";
import type { FieldError } from "#core/field-error";

/** Writes down what nobody expected, and gives the event id to tell instead, so that nothing of the inside leaks. */
export function unexpected(error: unknown): FieldError {
  const event = randomUUID();
  process.stderr.write(`event ${event}: ${error instanceof Error ? error.stack : String(error)}\n`);
  return { field: "request", rule: "unexpected", received: event };
}
