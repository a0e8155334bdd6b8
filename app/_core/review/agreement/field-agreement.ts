import { FIELDS, type Field } from "../../entries/vocabulary.ts";
import type { EntryHistory } from "../entry-history.ts";
import { findRevision } from "../find-in-history.ts";
import { weighVotes } from "../weigh-votes.ts";
import { fleissKappa } from "./fleiss-kappa.ts";
import { krippendorffAlpha } from "./krippendorff-alpha.ts";

/** How far the reviewers of a field agree; null where a figure is not defined. */
export type FieldAgreement = {
  readonly field: Field;
  /** Reviews with two opinions or more, which alpha is of. */
  readonly reviews: number;
  readonly opinions: number;
  readonly alpha: number | null;
  /** Of the first three opinions of each review that has as many, since it needs the same number of each. */
  readonly kappa: { readonly value: number | null; readonly reviews: number; readonly opinionsEach: number };
};

/** Opinions of one review that kappa takes. */
const EACH = 3;

/** What was said of one revision, by those whose votes count: of whoever abstains, nothing. */
export type ReviewOpinions = { readonly field: Field; readonly opinions: readonly string[] };

/** The opinions of every review of an entry, open ones too, of which two can be compared: the standing ones. */
export function opinionsIn(history: EntryHistory): readonly ReviewOpinions[] {
  return history.reviews.flatMap((review) => {
    const field = findRevision(history, review.revision)?.field;
    const opinions = weighVotes(history, review).flatMap(({ vote, notCounted }) =>
      notCounted === null && vote.choice !== "abstain" ? [vote.choice] : [],
    );
    return field && opinions.length >= 2 ? [{ field, opinions }] : [];
  });
}

/** How far the reviewers of each field agree. Fields without a review of two opinions are left out. */
export function agreementByField(reviews: readonly ReviewOpinions[]): readonly FieldAgreement[] {
  return FIELDS.flatMap((field) => {
    const units = reviews.flatMap((review) => (review.field === field ? [review.opinions] : []));
    if (units.length === 0) return [];
    const full = units.filter(({ length }) => length >= EACH).map((unit) => unit.slice(0, EACH));
    const counts = full.map((unit) =>
      ["support", "oppose"].map((choice) => unit.filter((each) => each === choice).length),
    );
    return [
      {
        field,
        reviews: units.length,
        opinions: units.flat().length,
        alpha: krippendorffAlpha(units),
        kappa: { value: fleissKappa(counts), reviews: full.length, opinionsEach: EACH },
      },
    ];
  });
}
