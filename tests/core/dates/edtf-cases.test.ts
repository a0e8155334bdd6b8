import { describe, expect, it } from "vitest";
import { parseInterval } from "#core/dates/parse";
import fixture from "../../fixtures/edtf/cases.json" with { type: "json" };
import { DISAGREEMENTS } from "./disagreements.ts";

type Case = (typeof fixture.cases)[number];
const { cases } = fixture;

/** What the file asks for and we do not give, named; empty when we agree. */
function differences({ string, valid, min, max }: Case): readonly string[] {
  const parsed = parseInterval(string);
  if (parsed.ok !== valid) return [valid ? "refused" : "accepted"];
  if (!parsed.ok) return [];
  const { firstDay, lastDay, start, end } = parsed.value;
  return [...edge("first day", min, firstDay, start.open), ...edge("last day", max, lastDay, end.open)];
}

function edge(name: string, wanted: string | null, got: string | null, open: boolean): readonly string[] {
  if (wanted === null) return [];
  const said = got ?? (open ? "open" : "unknown");
  return said === wanted ? [] : [`${name} ${said}`];
}

const stated = cases.filter((c) => differences(c).length === 0);

describe("the cases of the specification and of four libraries' tests", () => {
  it("are all there, and counted", () => {
    const bounds = cases.filter((c) => c.valid && (c.min ?? c.max) !== null).length;
    console.info(
      `EDTF: ${cases.length} cases, ${bounds} with bounds; ${stated.length} agree, ${DISAGREEMENTS.length} differ by name`,
    );
    expect([cases.length, stated.length + DISAGREEMENTS.length]).toEqual([366, 366]);
  });

  it.each(cases.filter((c) => !DISAGREEMENTS.some((d) => d.string === c.string && d.nth === nth(c))))(
    "“$string” (level $level, valid: $valid, $min to $max)",
    (each) => {
      expect(differences(each)).toEqual([]);
    },
  );

  it.each(DISAGREEMENTS)("“$string” differs: $ours, because $because", ({ string, nth: which, ours }) => {
    const found = cases.filter((c) => c.string === string)[which];
    expect(found && differences(found)).toEqual([ours].flat());
  });
});

/** A string may stand in the file more than once. */
function nth(each: Case): number {
  return cases.filter((c) => c.string === each.string).indexOf(each);
}
