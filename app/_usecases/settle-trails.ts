import type { FieldError } from "#core/field-error";
import { ok, type Result } from "#core/result";
import { decide } from "#core/review/decide";
import type { EntryEvent } from "#core/review/entry-event";
import { historyOf } from "#core/review/evolve";
import type { ReviewPolicy } from "#core/review/policy";
import type { Trails, Untraced } from "./ports/review.ts";
import type { Clock } from "./ports.ts";

type Needs = { readonly trails: Trails; readonly clock: Clock; readonly policy: ReviewPolicy };

/** Entries settled between two looks at what is left. */
const AT_ONCE = 100;

/**
 * Brings entries that were recorded before there were trails onto one: each revision as it was recorded, the newest
 * put forward for review now, since nobody could vote before. Done already, it does nothing.
 * @returns how many were brought onto one
 */
export async function settleTrails(needs: Needs): Promise<number> {
  let settled = 0;
  for (;;) {
    const lacking = await needs.trails.lacking(AT_ONCE);
    if (lacking.length === 0) return settled;
    for (const untraced of lacking) {
      const at = needs.clock.now().toISOString();
      const changed = await needs.trails.change(untraced.slug, ({ revisions }) =>
        revisions.length > 0 ? ok([]) : begin(untraced, at, needs.policy),
      );
      if (!changed.ok) throw new Error(`${untraced.slug} can't be given a trail: ${changed.error.rule}`);
      settled++;
    }
  }
}

function begin(
  { revisions }: Untraced,
  at: string,
  policy: ReviewPolicy,
): Result<readonly EntryEvent[], FieldError> {
  const events: EntryEvent[] = [];
  for (const each of revisions) {
    const recorded = decide(historyOf(events), {
      type: "record a revision",
      at: each.at,
      by: { importer: each.by },
      revision: each.revision,
    });
    if (!recorded.ok) return recorded;
    events.push(...recorded.value);
  }
  const newest = revisions.at(-1);
  if (!newest) return ok([]);
  const by = { importer: newest.by };
  const submitted = decide(historyOf(events), {
    type: "submit",
    at,
    by,
    revision: newest.revision.id,
    policy,
  });
  return submitted.ok ? ok([...events, ...submitted.value]) : submitted;
}
