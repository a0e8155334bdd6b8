import { type FieldError, received } from "../field-error.ts";
import type { Observed } from "./vocabulary.ts";

type Answer = { readonly observed: Observed | null; readonly option: string; readonly value: string };

/** What was seen is said, and only what was seen: the browser asks before it leaves a point, the host once more. */
export function checkObserved({ observed, option, value }: Answer): FieldError | null {
  const said = value || option;
  if (observed === "seen")
    return said === "" ? { field: "value", rule: "seen-with-value", received: "" } : null;
  if (said === "") return null;
  const params = { observed: observed ?? "" };
  return { field: "value", rule: "value-only-seen", received: received(said), params };
}
