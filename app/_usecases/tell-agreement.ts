import {
  agreementByField,
  type FieldAgreement,
  opinionsIn,
  type ReviewOpinions,
} from "#core/review/agreement/field-agreement";
import type { ReviewLists } from "./ports/review.ts";

/** Entries over which agreement is measured at most: those last voted on. */
const OVER = 2000;
/** Trails that are read at once, so that others get their turn. */
const AT_ONCE = 50;

/** What was said about entries, by their ids, with how many links of their trails had been read. */
export type ReadOpinions = Map<
  string,
  { readonly links: number; readonly reviews: readonly ReviewOpinions[] }
>;

/**
 * How far the reviewers of each field agree. A trail only ever grows: one that has as many links as when it was last
 * read says the same, and is not read again.
 * @param known what was read before; brought up to date
 */
export async function tellAgreement(
  reviewLists: Pick<ReviewLists, "votedOn" | "histories">,
  known: ReadOpinions,
): Promise<readonly FieldAgreement[]> {
  const voted = await reviewLists.votedOn(OVER);
  const grown = voted.filter(({ id, links }) => known.get(id)?.links !== links);
  for (let from = 0; from < grown.length; from += AT_ONCE) {
    const some = grown.slice(from, from + AT_ONCE);
    const histories = await reviewLists.histories(some.map(({ id }) => id));
    for (const { id, links } of some) {
      const history = histories.get(id);
      if (history) known.set(id, { links, reviews: opinionsIn(history) });
    }
  }
  const still = new Set(voted.map(({ id }) => id));
  for (const id of known.keys()) if (!still.has(id)) known.delete(id);
  return agreementByField(voted.flatMap(({ id }) => known.get(id)?.reviews ?? []));
}
