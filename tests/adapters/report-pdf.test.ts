import { createHash } from "node:crypto";
import { writeFile } from "node:fs/promises";
import sharp from "sharp";
import { extractText, getDocumentProxy } from "unpdf";
import { beforeAll, describe, expect, it } from "vitest";
import { drawReport } from "#adapters/report/report-pdf";
import { boatSource } from "../core/object-files/report-source.ts";
import { wordedReport } from "../core/object-files/report-words.ts";
import { id } from "../core/object-files/story.ts";

const WORDS = { page: (page: number, of: number) => `Clockwork steamer, page ${page} of ${of}` };
const PAPERS = [
  ["a4", 595.28, 841.89],
  ["letter", 612, 792],
] as const;

async function photograph(n: number, of: "whole" | "mark", item: string | null) {
  const colour = { r: 140, g: 40 + 10 * n, b: 60 };
  const bytes = await sharp({ create: { width: 1200, height: 800, channels: 3, background: colour } })
    .png()
    .toBuffer();
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  const said = { shows: "From port", credit: "O. Sarn" };
  return { bytes, photograph: { id: id(800 + n), sha256, width: 1200, height: 800, ...said, of, item } };
}

describe.each(PAPERS)("the PDF on %s", (paper, width, height) => {
  let pdf: Awaited<ReturnType<typeof getDocumentProxy>>;
  let text = "";
  let bytes: Uint8Array;
  beforeAll(async () => {
    const taken = [await photograph(1, "whole", null), await photograph(2, "mark", id(3))];
    const images = new Map(taken.map((each) => [each.photograph.sha256, each.bytes]));
    const report = wordedReport(boatSource(taken.map((each) => each.photograph)));
    bytes = await drawReport(report, images, paper, WORDS);
    if (process.env.KEEP_REPORTS) await writeFile(`${process.env.KEEP_REPORTS}/report-${paper}.pdf`, bytes);
    pdf = await getDocumentProxy(new Uint8Array(bytes));
    text = (await extractText(pdf, { mergePages: true })).text.replace(/\s+/g, " ");
  }, 60_000);

  it("has 2 to 8 pages of that size, each numbered", async () => {
    expect(pdf.numPages).toBeGreaterThanOrEqual(2);
    expect(pdf.numPages).toBeLessThanOrEqual(8);
    const { view } = await pdf.getPage(1);
    expect(view[2]).toBeCloseTo(width, 1);
    expect(view[3]).toBeCloseTo(height, 1);
    expect(text).toContain(`page ${pdf.numPages} of ${pdf.numPages}`);
  });

  it.each([
    "Attributed to Pell & Daughters",
    "not after 19 December 1924",
    "Two marks of Pell & Daughters stand on it",
    "Edda Trell, by descent to Mara Osk, 1979",
    "281 mm",
    "https://marks.example/entries/gull-in-ring/revisions/1",
    "not a valuation and not a guarantee of authenticity",
    "Old toys are not for children",
  ])("says: %s", (words) => {
    // An address or a hash may be broken at the end of a line.
    expect(text.replaceAll(" ", "")).toContain(words.replaceAll(" ", ""));
  });

  it("is tagged, with title and language, and embeds its fonts and two photographs", async () => {
    const { info } = (await pdf.getMetadata()) as { info: { Title?: string; Language?: string } };
    expect(info.Title).toBe("Clockwork steamer");
    expect(info.Language).toBe("en-GB");
    expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true });
    const tree = JSON.stringify(await (await pdf.getPage(1)).getStructTree());
    for (const role of ["H1", "H2", "Figure"]) expect(tree).toContain(`"role":"${role}"`);
    const raw = Buffer.from(bytes).toString("latin1");
    expect(raw.match(/\/FontFile[23]? /g)?.length).toBeGreaterThanOrEqual(3);
    expect(raw).not.toMatch(/\/BaseFont \/(Helvetica|Times)/);
    expect(raw.match(/\/Filter \/DCTDecode/g)?.length).toBe(2);
  });
});

it("writes Greek and Cyrillic as they are, and a sign that no font has as a question mark", async () => {
  const report = {
    ...{ title: "Όμηρος, Иван, Łódź ★", language: "en-GB", subtitle: "" },
    sections: [],
  };
  const pdf = await getDocumentProxy(new Uint8Array(await drawReport(report, new Map(), "a4", WORDS)));
  const { text } = await extractText(pdf, { mergePages: true });
  expect(text).toContain("Όμηρος, Иван, Łódź ?");
});
