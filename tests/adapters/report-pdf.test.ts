import { writeFile } from "node:fs/promises";
import { extractText, getDocumentProxy } from "unpdf";
import { beforeAll, describe, expect, it } from "vitest";
import { drawReport } from "#adapters/report/report-pdf";
import type { Paper } from "#core/object-files/report/blocks";
import { wordedIn } from "../core/object-files/report-words.ts";
import { hash } from "../core/object-files/story.ts";
import { fullestFile, poorFile, type ReportFile, steamerFile } from "../setup/report-files.ts";

const WORDS = { page: (page: number, of: number) => `Report, page ${page} of ${of}` };
const SIZES = { a4: [595.28, 841.89], letter: [612, 792] } as const;

type Tagged = {
  readonly role?: string;
  readonly alt?: string;
  readonly type?: string;
  readonly id?: string;
  readonly children?: readonly Tagged[];
};
type Pdf = Awaited<ReturnType<typeof getDocumentProxy>>;

async function drawn({ source, images }: ReportFile, paper: Paper, name: string) {
  const bytes = await drawReport(wordedIn(source), images, paper, WORDS);
  if (process.env.KEEP_REPORTS) await writeFile(`${process.env.KEEP_REPORTS}/${name}-${paper}.pdf`, bytes);
  const pdf = await getDocumentProxy(new Uint8Array(bytes));
  const { text } = await extractText(pdf, { mergePages: true });
  return { bytes, pdf, text: text.replace(/\s+/g, " ") };
}

/** The structure of all pages, in the order in which they are read. */
async function structureOf(pdf: Pdf): Promise<readonly Tagged[]> {
  const numbers = Array.from({ length: pdf.numPages }, (_, i) => i + 1);
  return Promise.all(numbers.map(async (n) => (await (await pdf.getPage(n)).getStructTree()) as Tagged));
}

const all = (node: Tagged): readonly Tagged[] => [node, ...(node.children ?? []).flatMap(all)];

/** Words by the id of the marked content that they stand in; what stands in none is under "". */
async function wordsByTag(pdf: Pdf): Promise<ReadonlyMap<string, string>> {
  const words = new Map([["", ""]]);
  for (let n = 1; n <= pdf.numPages; n++) {
    const page = await pdf.getPage(n);
    const { items } = await page.getTextContent({ includeMarkedContent: true });
    const open: string[] = [];
    for (const item of items) {
      if ("str" in item) {
        const tag = open.at(-1) ?? "";
        words.set(tag, (words.get(tag) ?? "") + item.str);
      } else if (item.type === "endMarkedContent") open.pop();
      else open.push(item.id ?? ("tag" in item ? String(item.tag) : ""));
    }
  }
  return words;
}

describe("the PDF of a file told to the end", () => {
  let file: ReportFile;
  const made: Partial<Record<Paper, Awaited<ReturnType<typeof drawn>>>> = {};
  beforeAll(async () => {
    file = await steamerFile();
    for (const paper of ["a4", "letter"] as const) made[paper] = await drawn(file, paper, "steamer");
  }, 120_000);
  const on = (paper: Paper) => {
    const found = made[paper];
    if (!found) throw new Error(`The PDF on ${paper} must have been made.`);
    return found;
  };

  it.each(["a4", "letter"] as const)("has 2 to 8 numbered pages of that size on %s", async (paper) => {
    const { pdf, text } = on(paper);
    expect(pdf.numPages).toBeGreaterThanOrEqual(2);
    expect(pdf.numPages).toBeLessThanOrEqual(8);
    const { view } = await pdf.getPage(1);
    expect(view[2]).toBeCloseTo(SIZES[paper][0], 1);
    expect(view[3]).toBeCloseTo(SIZES[paper][1], 1);
    expect(text).toContain(`page ${pdf.numPages} of ${pdf.numPages}`);
  });

  it.each([
    ["the finding", "Attributed to Brandreth & Sons"],
    ["the computed date", "Probably made 1922 to 1924: 19 of 20 such estimates hold the year."],
    ["its bounds", "by what nothing contradicts: not after 19 December 1924"],
    ["a weight", "1.3 bits; counted as true 90 times in 100"],
    ["the contradiction", "Jonas Trell had it 25 December 1913, before it could have been made"],
    [
      "the doubled mark",
      "Two marks of Brandreth & Sons stand on it; its entries say that an object bears one.",
    ],
    ["an explanation", "A master piece of the pattern room"],
    ["another explanation", "A repair brought the second mark"],
    ["what speaks against it", "Signs of repair were looked for and are absent."],
    ["its weight", "ruled out: The second is as old as the first: one wear over both."],
    ["the young label", "The label (stern) was not in use before 1 January 1934"],
    ["the ambiguous size", "If the catalogue gives height standing: 24 cm"],
    ["the other size", "If the catalogue gives length: none of the sizes"],
    ["a tolerance", "± 6.4 mm"],
    ["the chain", "Edda Trell, by descent to Mara Osk, 1979"],
    ["the alignment", "points agree, 9 of them numbered"],
    ["where the whole letter stands", "in the zip as documents/transcription-003.txt: 6"],
    ["a permanent address", "https://marks.example/entries/brandreth-sons-schooner/revisions/1"],
    ["a revision's hash", hash(2)],
    ["the file's hash", hash(33)],
    ["the rules' hash", hash(44)],
    ["the decoders' hash", hash(45)],
    ["the model", "Model that compared the marks: marks 7"],
    ["that it is an opinion", "not a valuation and not a guarantee of authenticity"],
    ["whom toys are not for", "Old toys are not for children"],
    ["materials", "Some materials need care or a permit"],
  ])("says %s in text that can be taken out, on both papers", (_, words) => {
    // An address or a hash may be broken at the end of a line.
    for (const paper of ["a4", "letter"] as const)
      expect(on(paper).text.replaceAll(" ", "")).toContain(words.replaceAll(" ", ""));
  });

  it("has a title and a language, and shows the title instead of the file's name", async () => {
    const { pdf, bytes } = on("a4");
    const { info } = (await pdf.getMetadata()) as { info: { Title?: string; Language?: string } };
    expect(info).toMatchObject({ Title: "Clockwork steamer from the attic", Language: "en-GB" });
    expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true });
    expect(Buffer.from(bytes).toString("latin1")).toContain("/DisplayDocTitle true");
  });

  it("is tagged in the order of reading, with headings in their order and nothing outside the tags", async () => {
    const { pdf } = on("a4");
    const pages = await structureOf(pdf);
    const words = await wordsByTag(pdf);
    const textOf = (node: Tagged): string =>
      all(node)
        .map(({ id }) => (id ? (words.get(id) ?? "") : ""))
        .join("");
    const headings = pages
      .flatMap(all)
      .filter(({ role }) => /^H[1-6]$/.test(role ?? ""))
      .map((node) => [node.role, textOf(node)]);
    expect(headings[0]).toEqual(["H1", "Clockwork steamer from the attic"]);
    expect(headings.filter(([role]) => role === "H1")).toHaveLength(1);
    const sections = wordedIn(file.source)().sections.map(({ heading }) => heading);
    expect(headings.filter(([role]) => role === "H2").map(([, text]) => text)).toEqual(sections);
    // Only the foot of the pages, and heads that stand again, are outside, and are marked as no content.
    expect(words.get("")).toBe("");
    expect(words.get("Artifact")).toMatch(/Report, page 1 of \d/);
    const tagged = pages.map(textOf).join("");
    expect(tagged).toContain("Probably made 1922 to 1924");
    expect(tagged).not.toContain("Report, page");
  });

  it("tags tables with heads and scopes, lists, and every picture with words for who cannot see it", async () => {
    const { pdf, bytes } = on("a4");
    const nodes = (await structureOf(pdf)).flatMap(all);
    const count = (role: string) => nodes.filter((node) => node.role === role).length;
    for (const role of ["Table", "TR", "TH", "TD", "L", "LI", "LBody", "Caption", "P", "Sect"])
      expect([role, count(role) > 0]).toEqual([role, true]);
    const figures = nodes.filter(({ role }) => role === "Figure");
    // Three of the whole, three for each laid mark, two of the label, two charts.
    expect(figures).toHaveLength(3 + 6 + 2 + 2);
    for (const { alt } of figures) expect(alt?.length ?? 0).toBeGreaterThan(4);
    const raw = Buffer.from(bytes).toString("latin1");
    expect(raw).toContain("/Scope /Column");
    expect(raw).toContain("/Scope /Row");
  });

  it("embeds its fonts and no standard one, and each photograph once", () => {
    const raw = Buffer.from(on("a4").bytes).toString("latin1");
    expect(raw.match(/\/FontFile[23]? /g)?.length).toBeGreaterThanOrEqual(4);
    expect(raw).not.toMatch(/\/BaseFont \/(Helvetica|Times|Courier)/);
    // Six of the file, two references, two pictures of both.
    expect(raw.match(/\/Filter \/DCTDecode/g)?.length).toBe(10);
  });
});

describe.each([
  ["of which little is known", poorFile, 2, 2],
  ["that holds as much as it may", fullestFile, 4, 8],
] as const)("the PDF of a file %s", (name, make, fewest, most) => {
  let file: ReportFile;
  beforeAll(async () => {
    file = await make();
  }, 120_000);

  it.each(["a4", "letter"] as const)(
    "keeps to its pages on %s and leaves out no section",
    async (paper) => {
      const { pdf, text } = await drawn(file, paper, name.replaceAll(" ", "-"));
      expect(pdf.numPages).toBeGreaterThanOrEqual(fewest);
      expect(pdf.numPages).toBeLessThanOrEqual(most);
      for (const { heading } of wordedIn(file.source)().sections) expect(text).toContain(heading);
      expect(text).toContain("not a valuation and not a guarantee of authenticity");
    },
    120_000,
  );
});

it("writes Greek and Cyrillic as they are, and a sign that no font has as a question mark", async () => {
  const report = () => ({
    ...{ title: "Όμηρος, Иван, Łódź ★", language: "en-GB", subtitle: "" },
    sections: [],
  });
  const pdf = await getDocumentProxy(new Uint8Array(await drawReport(report, new Map(), "a4", WORDS)));
  const { text } = await extractText(pdf, { mergePages: true });
  expect(text).toContain("Όμηρος, Иван, Łódź ?");
});
