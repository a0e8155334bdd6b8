import { describe, expect, it } from "vitest";
import { linkedArtOf } from "#core/object-files/report/linked-art";
import { SHAPES, type Value } from "./linked-art-shapes.ts";
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

/** Where a node breaks the shape that is asked of it, as paths with what is wrong. */
function breaches(node: unknown, name: string, at: string): readonly string[] {
  const shape = SHAPES[name];
  if (!shape) throw new Error(`No shape is named ${name}.`);
  if (typeof node !== "object" || node === null || Array.isArray(node)) return [`${at}: no ${name}`];
  const values = node as Readonly<Record<string, unknown>>;
  return [
    ...(values.type === shape.type ? [] : [`${at}: type ${String(values.type)}, not ${shape.type}`]),
    ...shape.needs.filter((need) => !(need in values)).map((need) => `${at}: ${need} is missing`),
    ...Object.entries(values).flatMap(([property, value]) => {
      const may = shape.may[property];
      return may ? broken(value, may, `${at}.${property}`) : [`${at}.${property}: not of ${name}`];
    }),
  ];
}

function broken(value: unknown, may: Value, at: string): readonly string[] {
  if (may === "number") return typeof value === "number" ? [] : [`${at}: no number`];
  if (may === "text") return typeof value === "string" ? [] : [`${at}: no text`];
  if (may === "address") return URL.canParse(String(value)) ? [] : [`${at}: no address`];
  if (may === "moment")
    return /^-?\d{4,}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/.test(String(value)) ? [] : [`${at}: no moment`];
  if ("one" in may) return breaches(value, may.one, at);
  if (!Array.isArray(value)) return [`${at}: no list`];
  return value.flatMap((each, i) => {
    const tried = may.many.map((name) => breaches(each, name, `${at}[${i}]`));
    return tried.find((found) => found.length === 0) ?? tried[0] ?? [];
  });
}

describe("the file as Linked Art", () => {
  it("breaks no shape of the published schema", () => {
    expect(breaches(file, "HumanMadeObject", "$")).toEqual([]);
    // The shapes can tell: what a reference must have is missed.
    const nameless = { ...file, shows: [{ type: "VisualItem", content: "x" }] };
    expect(breaches(nameless, "HumanMadeObject", "$")).toEqual([
      "$.shows[0]: id is missing",
      "$.shows[0].content: not of VisualItemRef",
    ]);
  });

  it("holds documents that tell of it, with their words and where their scans are", () => {
    const scan = { id: id(70), sha256: "ab".repeat(32), type: "image/jpeg" as const, name: "letter.jpg" };
    const source = boatSource();
    const { content } = source.kept;
    const documents = content.documents.map((each) => ({ ...each, scans: [scan] }));
    const shared = "https://marks.example/shared/a-key";
    const whole = linkedArtOf(
      { ...source, kept: { ...source.kept, content: { ...content, documents } } },
      shared,
    );
    expect(breaches(whole, "HumanMadeObject", "$")).toEqual([]);
    expect(whole.subject_of).toHaveLength(2);
    expect(JSON.stringify(whole.subject_of)).toContain("He had it for Christmas 1913.");
    expect(JSON.stringify(whole.subject_of)).toContain(`${shared}/images/${scan.sha256}`);
  });

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
        carried_out_by: [
          { id: `https://marks.example/members/${id(900)}`, type: "Person", _label: "Ottoline Sarn" },
        ],
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
