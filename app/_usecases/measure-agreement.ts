import { agreementByField, type FieldAgreement } from "#core/review/agreement/field-agreement";
import type { EntryEvent } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import { historyOf } from "#core/review/evolve";
import { eventOf } from "#core/trail/chain";
import type { Trails } from "./ports/review.ts";

/** Trails read at once. */
const BATCH = 200;

/** How far the reviewers of each field agree, over every trail of an entry on which somebody voted. */
export async function measureAgreement(trails: Trails): Promise<readonly FieldAgreement[]> {
  const histories: EntryHistory[] = [];
  let after: string | null = null;
  for (;;) {
    const names: readonly string[] = await trails.names(after, BATCH);
    for (const name of names.filter((each) => each.startsWith("entry:"))) {
      const events = (await trails.links(name)).map((link) => eventOf<EntryEvent>(link));
      if (events.some(({ type }) => type === "vote cast")) histories.push(historyOf(events));
    }
    after = names.at(-1) ?? null;
    if (names.length < BATCH) return agreementByField(histories);
  }
}
