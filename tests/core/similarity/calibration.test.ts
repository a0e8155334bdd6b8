import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parseCalibration } from "#core/similarity/calibration";

const path = join(import.meta.dirname, "..", "..", "..", "ml", "model", "calibration.json");
const shipped = () => JSON.parse(readFileSync(path, "utf8"));

describe("a calibration file", () => {
  it("that ships is read whole, and was measured on other photographs than it was fitted on", () => {
    const read = parseCalibration(shipped());
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    expect(read.value).toEqual(shipped());
    const { measured, reliability } = read.value;
    const first = measured[0];
    expect(reliability.reduce((sum, { count }) => sum + count, 0)).toBe(
      (first?.present ?? 0) + (first?.absent ?? 0),
    );
  });

  it.each([
    ["no object", () => null, { field: "calibration", rule: "an object", received: "null" }],
    [
      "a model without a version",
      (file: ReturnType<typeof shipped>) => ({ ...file, model: "marks" }),
      { field: "model", rule: "name@version", received: "marks" },
    ],
    [
      "a day that is none",
      (file: ReturnType<typeof shipped>) => ({ ...file, date: "today" }),
      { field: "date", rule: "a day as YYYY-MM-DD", received: "today" },
    ],
    [
      "a coefficient that is a text",
      (file: ReturnType<typeof shipped>) => ({
        ...file,
        plain: { ...file.plain, none: { ...file.plain.none, entries: "2" } },
      }),
      { field: "plain.none.entries", rule: "a number", received: "2" },
    ],
    [
      "nearness that speaks against",
      (file: ReturnType<typeof shipped>) => ({
        ...file,
        plain: { ...file.plain, similarity: { ...file.plain.similarity, slope: -1 } },
      }),
      { field: "plain.similarity.slope", rule: "a number from 0", received: "-1" },
    ],
    [
      "a reliability table of another length",
      (file: ReturnType<typeof shipped>) => ({ ...file, reliability: file.reliability.slice(1) }),
      { field: "reliability", rule: "a list of 15" },
    ],
    [
      "a share above one",
      (file: ReturnType<typeof shipped>) => ({
        ...file,
        measured: [{ ...file.measured[0], ece: 1.5 }],
      }),
      { field: "measured[0].ece", rule: "a number from 0 to 1", received: "1.5" },
    ],
    [
      "no word on re-ranking",
      ({ reranked: _, ...file }: ReturnType<typeof shipped>) => file,
      { field: "reranked", rule: "an object" },
    ],
  ])("with %s is refused, with the field, the rule and what was received", (_, change, error) => {
    expect(parseCalibration(change(shipped()))).toMatchObject({ ok: false, error });
  });
});
