import type { EntryContent } from "../entries/entry.ts";
import type { Merged } from "../entries/merge-content.ts";
import type { Photograph } from "../photographs/photograph.ts";
import type { Typed } from "../questions/typed-text.ts";
import type { Draft, DraftPhotograph } from "./draft.ts";
import { groupOf } from "./draft-fields.ts";
import { mergeTyped } from "./merge-typed.ts";
import { groupOfPhotograph, typedOf } from "./tidy-typed.ts";
import { typeContent } from "./type-content.ts";

/** A revision's content with its photographs. */
export type Version = {
  readonly content: EntryContent;
  readonly photographs: readonly Photograph[];
};

/** A photograph of a revision as a draft holds it. */
export const draftPhotograph = ({ sha256, width, height }: Photograph): DraftPhotograph => ({
  sha256,
  width,
  height,
  proposed: null,
});

/**
 * A draft beside the revision that came meanwhile: what either side changed since the revision they both began from.
 * Why it was changed, and with whom, is the author's own, and in no conflict.
 */
export function threeWays(draft: Draft, base: Version, theirs: Version): Merged {
  const mine = typedOf(draft);
  const [from, their] = [base, theirs].map(({ content, photographs }) =>
    typeContent(content, photographs),
  ) as [Typed, Typed];
  return mergeTyped(from, mine, their);
}

/**
 * The photographs after two changes were put together: one stays when something is said of it in the end, or when it
 * was only just uploaded.
 * @param chosen what is typed in the end
 */
export function photographsAfter(
  draft: Draft,
  base: Version,
  theirs: Version,
  chosen: Typed,
): readonly DraftPhotograph[] {
  const said = new Set(Object.keys(chosen).map(groupOf));
  const before = new Set(base.photographs.map(({ sha256 }) => sha256));
  const mine = new Set(draft.photographs.map(({ sha256 }) => sha256));
  const added = theirs.photographs.filter(({ sha256 }) => !mine.has(sha256)).map(draftPhotograph);
  return [...draft.photographs, ...added].filter(
    (each) => said.has(groupOfPhotograph(each)) || (mine.has(each.sha256) && !before.has(each.sha256)),
  );
}
