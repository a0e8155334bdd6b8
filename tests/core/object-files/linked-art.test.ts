import { describe, expect, it } from "vitest";
import { linkedArtOf } from "#core/object-files/report/linked-art";
import { boatSource } from "./report-source.ts";
import { id } from "./story.ts";

const BASE = `https://marks.example/objects/${id(99)}`;
const file = linkedArtOf(boatSource(), BASE) as Record<string, never>;
const nodes = (value: unknown): Record<string, unknown>[] =>
  typeof value !== "object" || value === null
    ? []
    : [
        ...(Array.isArray(value) ? [] : [value as Record<string, unknown>]),
        ...Object.values(value).flatMap(nodes),
      ];

describe("the file as Linked Art", () => {
  it("is an object with a name, and everything in it has a type", () => {
    expect(file).toMatchObject({ id: BASE, type: "HumanMadeObject", _label: "Clockwork steamer" });
    const untyped = nodes(file).filter(({ type }) => typeof type !== "string");
    expect(untyped).toEqual([]);
  });

  it("dates the making by the first and last year that the evidence leaves, as date and time", () => {
    expect(file.produced_by).toMatchObject({
      type: "Production",
      timespan: {
        type: "TimeSpan",
        begin_of_the_begin: expect.stringMatching(/^19\d\d-01-01T00:00:00Z$/),
        end_of_the_end: expect.stringMatching(/^19\d\d-12-31T23:59:59Z$/),
      },
    });
  });

  it("gives the maker as what somebody assigned, on revisions, never as a fact", () => {
    const made = file.produced_by as unknown as { attributed_by: unknown[]; carried_out_by?: unknown };
    expect(made.carried_out_by).toBeUndefined();
    expect(made.attributed_by).toMatchObject([
      {
        type: "AttributeAssignment",
        _label: "attributed to Pell & Daughters",
        assigned: [{ type: "Group", _label: "Pell & Daughters" }],
        assigned_property: "carried_out_by",
        carried_out_by: [{ type: "Person", _label: "Ottoline Sarn" }],
      },
    ]);
    expect(JSON.stringify(made)).toContain("https://marks.example/entries/gull-in-ring/revisions/1");
  });

  it("gives measures with their limits", () => {
    const dimensions: { value: number; lower_value_limit: number; upper_value_limit: number }[] =
      file.dimension ?? [];
    expect(dimensions.map(({ value }) => value)).toEqual([281, 242]);
    for (const each of dimensions) expect(each.lower_value_limit).toBeLessThan(each.value);
  });
});
