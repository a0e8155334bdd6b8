import type { FieldError } from "../field-error.ts";
import type { ActingMember } from "../members/member.ts";
import { ok, type Result } from "../result.ts";
import { decide } from "./decide.ts";
import type { EntryEvent, RecordedRevision } from "./entry-event.ts";
import { historyOf } from "./evolve.ts";
import type { ReviewPolicy } from "./policy.ts";

/** What follows when a revision is recorded and put forward for review in one step. */
export function recordAndSubmit(
  events: readonly EntryEvent[],
  given: {
    readonly at: string;
    readonly by: ActingMember | { readonly importer: string };
    readonly revision: RecordedRevision;
    readonly policy: ReviewPolicy;
  },
): Result<readonly EntryEvent[], FieldError> {
  const { at, by, revision, policy } = given;
  const recorded = decide(historyOf(events), { type: "record a revision", at, by, revision });
  if (!recorded.ok) return recorded;
  const history = historyOf([...events, ...recorded.value]);
  const rules: ReviewPolicy = "importer" in by ? { ...policy, daysFrom: "first vote" } : policy;
  const submitted = decide(history, { type: "submit", at, by, revision: revision.id, policy: rules });
  return submitted.ok ? ok([...recorded.value, ...submitted.value]) : submitted;
}
