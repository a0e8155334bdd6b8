import type { FieldError } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Published } from "./question.ts";
import { type Typed, TypedReader } from "./typed-text.ts";

export const PUBLICATION_FIELDS = ["title", "about", "name", "licence", "credit", "confirmed"] as const;

/** What is said when a look-up is published: the question, and under which terms its photographs are shown. */
export type Publication = {
  readonly published: Published;
  readonly licence: string;
  readonly credit: string;
};

/** Reads the form in which a look-up is published; every wrong field is named. */
export function parsePublication(typed: Typed): Result<Publication, readonly FieldError[]> {
  const read = new TypedReader(typed);
  const published = {
    title: read.line("title", { shortest: 5, longest: 120 }),
    text: read.text("about", { shortest: 20, longest: 4000 }),
    name: read.line("name", { shortest: 2, longest: 60 }),
  };
  const licence = read.line("licence", { shortest: 1, longest: 100 });
  const credit = read.line("credit", { shortest: 1, longest: 120 });
  if (typed.confirmed !== "yes") read.refuse("confirmed", "confirmed", typed.confirmed ?? "");
  return read.errors.length > 0 ? fail(read.errors) : ok({ published, licence, credit });
}
