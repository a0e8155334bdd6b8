import type { EntryContent } from "./entry.ts";
import { type Hideable, isHideable } from "./hideable.ts";

/** What stands where a text is hidden. */
export const HIDDEN = "[hidden]";

/**
 * A revision's content as it is served: a hidden text is replaced.
 * @param hiddenTexts of the entry: a revision's id, a slash, the field
 */
export function servedContent(
  content: EntryContent,
  revision: string,
  hiddenTexts: readonly string[],
  instead = HIDDEN,
): EntryContent {
  const hidden = hiddenFields(revision, hiddenTexts);
  if (hidden.length === 0) return content;
  return { ...content, ...Object.fromEntries(hidden.map((field) => [field, instead])) };
}

/** Fields of a revision that are hidden. */
export function hiddenFields(revision: string, hiddenTexts: readonly string[]): readonly Hideable[] {
  return hiddenTexts.flatMap((text) => {
    const [id, field = ""] = text.split("/");
    return id === revision && isHideable(field) ? [field] : [];
  });
}
