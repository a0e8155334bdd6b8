import { expect, it } from "vitest";
import type { EntryView } from "#core/entries/entry";
import { relatedOnce } from "../../app/_ui/entry/related-once.ts";

type Relation = EntryView["relations"][number];
const related = (slug: string, kind: Relation["kind"]) => ({ kind, entry: { slug } }) as Relation;

it("names an entry once that is related in two ways", () => {
  const once = relatedOnce([
    related("anvil", "preceded by"),
    related("crown", "followed by"),
    related("anvil", "variant of"),
  ]);
  expect(once.map(({ entry, kinds }) => [entry.slug, ...kinds])).toEqual([
    ["anvil", "preceded by", "variant of"],
    ["crown", "followed by"],
  ]);
});
