import { describe, expect, it } from "vitest";
import { REPORT_SECTIONS, type Report } from "#core/object-files/report/blocks";
import { boatSource } from "./report-source.ts";
import { wordedReport } from "./report-words.ts";
import { id } from "./story.ts";

const photograph = (n: number, of: "whole" | "mark", item: string | null) => ({
  ...{ id: id(800 + n), sha256: n.toString(16).padStart(64, "0"), width: 1600, height: 1200 },
  ...{ shows: "From port", credit: "O. Sarn", of, item },
});
const report = wordedReport(boatSource([photograph(1, "mark", id(3)), photograph(2, "whole", null)]));
const textOf = (section: string, from: Report<string> = report) =>
  JSON.stringify(from.sections.find((each) => each.id === section)?.blocks);
const blocksOf = (section: string) => report.sections.find((each) => each.id === section)?.blocks ?? [];

describe("the report on the tin boat", () => {
  it("has every section once, in the order of the list", () => {
    expect(report.sections.map((each) => each.id)).toEqual([...REPORT_SECTIONS]);
  });

  it("begins with the object as a whole, large, and the finding in the trade's words", () => {
    const [first, lead] = blocksOf("finding");
    expect(first).toMatchObject({ is: "photographs", size: "large" });
    expect(first?.is === "photographs" && first.photographs[0]?.sha256.endsWith("2")).toBe(true);
    expect(lead).toEqual({ is: "lead", says: "Attributed to Pell & Daughters" });
    expect(textOf("finding")).toContain("Stated by Ottoline Sarn, 20 November 2026, on 2 revisions");
  });

  it("says bounds of what nothing contradicts, since the letter contradicts the marks", () => {
    expect(textOf("finding")).toMatch(/by what nothing contradicts: not (before|after)/);
  });

  it("weighs every piece of evidence in bits, and shows each on one axis", () => {
    const [table, chart] = blocksOf("evidence");
    const rows = table?.is === "table" ? table.rows : [];
    expect(rows.length).toBeGreaterThan(4);
    for (const row of rows) expect(row[2]).toMatch(/\d bits; counted as true [\d.]+ times in 100/);
    expect(chart?.is === "chart" && chart.bars.length > rows.length).toBe(true);
  });

  it("sets a mark that was looked up beside its reference, numbers what is the same, and says how much is", () => {
    const source = boatSource([photograph(1, "mark", id(3)), photograph(2, "mark", id(4))]);
    const points = Array.from({ length: 30 }, (_, i) => ({
      query: [100 + 7 * i, 90 + ((i * i) % 50)] as const,
      reference: [10 + 5 * i, 20 + ((i * i) % 40)] as const,
    }));
    const region = { x: 0, y: 0, width: 200, height: 100, turn: 0 };
    const reference = {
      ...{ id: id(600), sha256: "f".repeat(64), width: 400, height: 300, region, pixelsPerMm: null },
      ...{ shows: "Underside", licence: "CC BY 4.0", credit: "A. Redgate", impression: null },
    };
    const alignment = { inliers: 30, points, homography: [1, 0, 0, 0, 1, 0, 0, 0, 1], plausible: true };
    const laid = { own: photograph(1, "mark", id(3)).sha256, region, alignment };
    const unlike = {
      ...laid,
      own: photograph(2, "mark", id(4)).sha256,
      alignment: { ...alignment, plausible: false },
    };
    const references = {
      [id(3)]: { photograph: reference, laid },
      [id(4)]: { photograph: reference, laid: unlike },
    };
    const shown =
      wordedReport({ ...source, references }).sections.find((each) => each.id === "marks")?.blocks ?? [];
    const [first] = shown.filter((each) => each.is === "laid");
    expect(shown.filter((each) => each.is === "laid")).toHaveLength(1);
    expect(first?.is === "laid" && first.own.places).toHaveLength(9);
    expect(first?.is === "laid" && first.over.caption).toContain("30 points agree, 9 of them numbered");
    // Where nothing can be laid over, both stand beside each other as they are.
    const [beside] = shown.filter((each) => each.is === "photographs");
    expect(beside?.is === "photographs" && beside.photographs.map(({ from }) => from)).toEqual([
      "file",
      "reference",
    ]);
  });

  it("puts each explanation's for and against side by side and picks none", () => {
    expect(textOf("anomalies")).toContain("Two marks of Pell & Daughters stand on it");
    const weights = blocksOf("anomalies").flatMap((each) => (each.is === "table" ? each.rows : []));
    expect(weights.length).toBeGreaterThan(3);
    expect(new Set(weights.map((row) => row[3]))).toEqual(new Set(["Not weighed yet"]));
  });

  it("tells the chain, its contradiction and its documents", () => {
    expect(textOf("provenance")).toContain("Edda Trell, by descent to Mara Osk, 1979");
    expect(textOf("provenance")).toContain(
      "Jonas Trell had it 25 December 1913, before it could have been made: not before",
    );
    expect(textOf("documents")).toMatch(
      /… \(in full on the file’s page of provenance, and in the zip as documents\/transcription-002\.txt: 3,\d{3} words\)/,
    );
  });

  it("gives measures with tolerances and leaves the size open", () => {
    expect(textOf("measurements")).toContain("281 mm");
    expect(textOf("measurements")).toMatch(/± [\d.]+ mm/);
    expect(textOf("measurements")).toContain("none of the sizes");
  });

  it("cites revisions by address and hash, and says by which model and tables", () => {
    expect(textOf("citations")).toContain("https://marks.example/entries/gull-in-ring/revisions/1");
    expect(textOf("citations")).toContain("1".padStart(64, "0"));
    expect(textOf("versions")).toContain("marks 7");
    expect(textOf("versions")).toContain((44).toString(16).padStart(64, "0"));
  });

  it("says that it is an opinion, and of toys that they are not for children", () => {
    expect(textOf("cautions")).toContain("not a valuation and not a guarantee");
    expect(textOf("cautions")).toContain("not for children");
    const source = boatSource();
    const clock = {
      ...source,
      kept: { ...source.kept, content: { ...source.kept.content, family: "furniture" as const } },
    };
    expect(textOf("cautions", wordedReport(clock))).not.toContain("not for children");
  });
});
