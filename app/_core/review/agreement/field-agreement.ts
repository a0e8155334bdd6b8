import { FIELDS, type Field } from "../../entries/vocabulary.ts";
import type { EntryHistory, Review } from "../entry-history.ts";
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

/**
 * How far the reviewers of each field agree, over all reviews, open ones too: of votes that count, the standing ones.
 * Who abstains gives no opinion. Fields without a review of two opinions are left out.
 */
export function agreementByField(histories: readonly EntryHistory[]): readonly FieldAgreement[] {
  return FIELDS.flatMap((field) => {
    const units = histories.flatMap((history) =>
      history.reviews
        .filter(({ revision }) => findRevision(history, revision)?.field === field)
        .map((review) => opinions(history, review))
        .filter(({ length }) => length >= 2),
    );
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

function opinions(history: EntryHistory, review: Review): readonly string[] {
  return weighVotes(history, review).flatMap(({ vote, notCounted }) =>
    notCounted === null && vote.choice !== "abstain" ? [vote.choice] : [],
  );
}
