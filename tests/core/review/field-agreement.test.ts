import { expect, it } from "vitest";
import { agreementByField, opinionsIn } from "#core/review/agreement/field-agreement";
import type { EntryHistory } from "#core/review/entry-history";
import type { Choice } from "#core/review/vote";
import { after, potter, record, revision, rolf, rosa, ruth, SUBMITTED, submit, vote } from "./story.ts";

const judged = (...choices: readonly Choice[]) =>
  after(
    ...SUBMITTED,
    ...choices.flatMap((choice, i) => [rosa, ruth, rolf].slice(i, i + 1).map((by) => vote(1, by, choice))),
  );

const agreementOf = (histories: readonly EntryHistory[]) => agreementByField(histories.flatMap(opinionsIn));

it("tells how far the reviewers of a field agree", () => {
  const found = agreementOf([
    judged("support", "support", "support"),
    judged("oppose", "oppose", "support"),
    judged("support", "support", "abstain"),
    judged("support"),
  ]);
  // Alpha by hand: 8 opinions, 6 support; Do = 2 / 8, De = 2 * 6 * 2 / (8 * 7); kappa: (3 + 1) / 6 seen, 20 / 36 expected.
  expect(found).toEqual([
    {
      field: "metalwork",
      reviews: 3,
      opinions: 8,
      alpha: expect.closeTo(1 - 2 / 8 / (24 / 56), 12),
      kappa: { value: expect.closeTo((4 / 6 - 20 / 36) / (16 / 36), 12), reviews: 2, opinionsEach: 3 },
    },
  ]);
});

it("looks at votes that count alone, and leaves out fields of which there is nothing to tell", () => {
  const glass = record(0, revision(1, { field: "glass" }));
  expect(agreementOf([after(glass, submit(0), vote(1, rosa), vote(1, ruth))])).toEqual([]);
  expect(agreementOf([after(...SUBMITTED, vote(1, rosa), vote(1, potter))])).toEqual([]);
});
