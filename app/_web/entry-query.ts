import { parsePeriod } from "#core/dates/parse";
import type { EntryQuery } from "#core/entries/query";
import { KINDS, TECHNIQUES } from "#core/entries/vocabulary";
import { type FieldError, received } from "#core/field-error";

export type SearchParams = Readonly<Record<string, string | readonly string[] | undefined>>;

/**
 * What the address of a search asks for. What can't be read is left out of the query and named, so that the page
 * can show it at its field with what was typed.
 */
export function parseEntryQuery(params: SearchParams): { query: EntryQuery; errors: readonly FieldError[] } {
  const errors: FieldError[] = [];
  const text = (name: string) => {
    const value = params[name];
    return (typeof value === "string" ? value : (value?.[0] ?? "")).replaceAll("\0", "").trim().slice(0, 200);
  };
  const oneOf = <T extends string>(name: string, allowed: readonly T[]): T | null => {
    const value = text(name);
    if (value === "") return null;
    const found = allowed.find((a) => a === value);
    if (!found)
      errors.push({ field: name, rule: "one-of", received: value, params: { allowed: allowed.join(", ") } });
    return found ?? null;
  };
  const period = text("period") === "" ? null : parsePeriod(text("period"), "period");
  if (period && !period.ok) errors.push(period.error);
  const page = text("page") === "" ? 1 : Number(text("page"));
  const pageIsFine = Number.isInteger(page) && page >= 1 && page <= 10_000;
  if (!pageIsFine)
    errors.push({
      field: "page",
      rule: "whole-number",
      received: received(text("page")),
      params: { from: 1, to: 10_000 },
    });
  return {
    query: {
      words: text("words"),
      kind: oneOf("kind", KINDS),
      technique: oneOf("technique", TECHNIQUES),
      material: text("material") || null,
      maker: text("maker") || null,
      period: period?.ok ? period.value : null,
      page: pageIsFine ? page : 1,
    },
    errors,
  };
}
