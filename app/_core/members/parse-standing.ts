import { FIELDS } from "../entries/vocabulary.ts";
import type { FieldError } from "../field-error.ts";
import { type Typed, TypedReader } from "../questions/typed-text.ts";
import { fail, ok, type Result } from "../result.ts";
import type { StandingCommand } from "./decide-standing.ts";

export const STANDING_ACTS = ["reviewer", "moderator", "suspend", "restore"] as const;
export type StandingAct = (typeof STANDING_ACTS)[number];

/** Signs that a reason must have at least: fewer name no reason. */
export const SHORTEST_REASON = 20;

/** Reads the form of an act: what, and why. */
export function parseStanding(
  act: StandingAct,
  typed: Typed,
): Result<{ readonly command: StandingCommand; readonly reason: string }, readonly FieldError[]> {
  const read = new TypedReader(typed);
  const reason = read.text("reason", { shortest: SHORTEST_REASON, longest: 1000 });
  return read.errors.length > 0 ? fail(read.errors) : ok({ command: commandFrom(act, typed), reason });
}

function commandFrom(act: StandingAct, typed: Typed): StandingCommand {
  switch (act) {
    case "reviewer":
      return {
        type: "appoint reviewer",
        fields: FIELDS.filter((field) => typed[`field ${field}`] === "yes"),
      };
    case "moderator":
      return { type: typed.moderator === "yes" ? "appoint moderator" : "dismiss moderator" };
    case "suspend":
      return { type: "suspend" };
    case "restore":
      return { type: "restore" };
  }
}
