import type { Typed } from "../questions/typed-text.ts";
import type { Draft, DraftPhotograph } from "./draft.ts";
import { groupOf, isDraftField, photographField } from "./draft-fields.ts";

/** Signs that a field keeps at most: what is longer than it may be is still kept, to be shortened. */
const KEPT = 10_000;

/** What a form sent, as a draft keeps it: its fields alone, empty ones left out, with one kind of line break. */
export function tidyTyped(sent: Typed): Typed {
  const kept = Object.entries(sent).flatMap(([name, text]) =>
    isDraftField(name) && text.trim() !== ""
      ? [[name, text.replace(/\r\n?/g, "\n").replaceAll("\0", "").slice(0, KEPT)] as const]
      : [],
  );
  return Object.fromEntries(kept);
}

/** What is typed, without what was typed of photographs that were taken out since. */
export function typedOf({ typed, photographs }: Pick<Draft, "typed" | "photographs">): Typed {
  const there = new Set(photographs.map(groupOfPhotograph));
  return Object.fromEntries(
    Object.entries(typed).filter(([name]) => {
      const group = groupOf(name);
      return !group.startsWith("photograph-") || there.has(group);
    }),
  );
}

/** The group of the fields that say something of a photograph. */
export const groupOfPhotograph = ({ sha256 }: Pick<DraftPhotograph, "sha256">): string =>
  groupOf(photographField(sha256, "shows"));
