import PDFDocument from "pdfkit";
import sharp from "sharp";
import { blocksOf, type Paper, type Report, type ReportBlock } from "#core/object-files/report/blocks";
import { MOST_PAGES, ROOMS } from "#core/object-files/report/room";
import type { Reports } from "../../_usecases/ports/reports.ts";
import { drawChart } from "./draw-chart.ts";
import { drawLaid, nameOfLaid } from "./draw-laid.ts";
import { drawPhotographs, type PdfImage } from "./draw-photographs.ts";
import { drawTable } from "./draw-table.ts";
import { registerFonts } from "./fonts.ts";
import { layOver } from "./lay-over.ts";
import { columnOf, GREY, keepTogether, type Style, write } from "./sheet.ts";

const STYLES = {
  title: { face: "strong", size: 22, gap: 2 },
  section: { face: "sans-strong", size: 13, gap: 4 },
  heading: { face: "strong", size: 11.5, gap: 3 },
  lead: { face: "strong", size: 16, gap: 4 },
  text: { face: "text", size: 10.5, gap: 4 },
  quoted: { face: "text", size: 10.5, gap: 4, colour: GREY },
  note: { face: "sans", size: 8.5, gap: 4, colour: GREY },
} as const satisfies Readonly<Record<string, Style>>;

/** Draws a report: real text in embedded fonts, tagged, images as JPEG, charts as lines. */
export const drawReport: Reports["pdf"] = async (report, images, paper, words) => {
  const pictures = await readImages(report(ROOMS[0]), images);
  for (const room of ROOMS) {
    const { pages, bytes } = await draw(report(room), pictures, paper, words);
    if (pages <= MOST_PAGES || room === ROOMS.at(-1)) return bytes;
  }
  throw new Error("ROOMS must not be empty.");
};

type Drawn = { readonly pages: number; readonly bytes: Uint8Array };

async function draw(
  report: Report<string>,
  pictures: ReadonlyMap<string, PdfImage>,
  paper: Paper,
  words: Parameters<Reports["pdf"]>[3],
): Promise<Drawn> {
  const doc = new PDFDocument({
    size: paper === "a4" ? "A4" : "LETTER",
    margins: { top: 54, bottom: 60, left: 54, right: 54 },
    ...{ tagged: true, lang: report.language, pdfVersion: "1.7", displayTitle: true, bufferPages: true },
    info: { Title: report.title },
  });
  const chunks: Buffer[] = [];
  const done = new Promise<Uint8Array>((resolve, reject) => {
    doc.on("data", (chunk: Buffer) => chunks.push(chunk));
    doc.on("end", () => resolve(Buffer.concat(chunks)));
    doc.on("error", reject);
  });
  registerFonts(doc);
  drawSections(doc, report, pictures);
  const pages = numberPages(doc, words.page);
  doc.end();
  return { pages, bytes: await done };
}

function drawSections(
  doc: PDFKit.PDFDocument,
  { title, subtitle, sections }: Report<string>,
  images: ReadonlyMap<string, PdfImage>,
): void {
  const root = doc.struct("Document");
  doc.addStructure(root);
  root.add(doc.struct("H1", {}, () => write(doc, title, STYLES.title)));
  root.add(doc.struct("P", {}, () => write(doc, subtitle, { ...STYLES.note, gap: 10 })));
  sections.forEach(({ heading, blocks }, i) => {
    const section = doc.struct("Sect");
    root.add(section);
    // The object and the finding have the first page to themselves.
    if (i === 1) doc.addPage();
    else if (i > 1) doc.y += 10;
    keepTogether(doc, 90);
    section.add(doc.struct("H2", {}, () => write(doc, heading, STYLES.section)));
    for (const block of blocks) drawBlock(doc, section, block, images);
    section.end();
  });
  root.end();
}

function drawBlock(
  doc: PDFKit.PDFDocument,
  section: PDFKit.PDFStructureElement,
  block: ReportBlock<string>,
  images: ReadonlyMap<string, PdfImage>,
): void {
  switch (block.is) {
    case "table":
      drawTable(doc, section, block);
      return;
    case "chart":
      drawChart(doc, section, block);
      return;
    case "photographs":
      drawPhotographs(doc, section, block, images);
      return;
    case "laid":
      drawLaid(doc, section, block, images);
      return;
    case "points": {
      const list = doc.struct("L");
      section.add(list);
      for (const point of block.points) {
        const item = doc.struct("LI");
        list.add(item);
        item.add(doc.struct("LBody", {}, () => write(doc, `•  ${point}`, STYLES.text)));
        item.end();
      }
      list.end();
      return;
    }
    case "heading":
      keepTogether(doc, 60);
      section.add(doc.struct("H3", {}, () => write(doc, block.says, STYLES.heading)));
      return;
    default:
      section.add(doc.struct("P", {}, () => write(doc, block.says, STYLES[block.is])));
  }
}

/** At the foot of every page: the title, and which of how many it is. */
function numberPages(doc: PDFKit.PDFDocument, words: (page: number, of: number) => string): number {
  const { start, count } = doc.bufferedPageRange();
  for (let i = start; i < start + count; i++) {
    doc.switchToPage(i);
    const { left, width, foot } = columnOf(doc);
    // Text that stands below the margin would begin a new page.
    doc.page.margins.bottom = 0;
    doc.markContent("Artifact", { type: "Pagination" });
    write(doc, words(i + 1 - start, count), STYLES.note, { x: left, y: foot + 18, width });
    doc.endMarkedContent();
  }
  return count;
}

/** What the report shows, wide enough for print at the size in which it stands, and no wider. */
async function readImages(
  report: Report<string>,
  images: ReadonlyMap<string, Uint8Array>,
): Promise<ReadonlyMap<string, PdfImage>> {
  const read = new Map<string, PdfImage>();
  for (const [sha256, bytes] of images) read.set(sha256, await readImage(bytes));
  for (const block of blocksOf(report)) {
    if (block.is !== "laid") continue;
    const [own, reference] = [images.get(block.own.sha256), images.get(block.reference.sha256)];
    if (own && reference) read.set(nameOfLaid(block), await readImage(await layOver(block, own, reference)));
  }
  return read;
}

async function readImage(bytes: Uint8Array): Promise<PdfImage> {
  const { data, info } = await sharp(bytes)
    .resize({ width: 1600, height: 1600, fit: "inside", withoutEnlargement: true })
    .flatten({ background: "#ffffff" })
    .jpeg({ quality: 86 })
    .toBuffer({ resolveWithObject: true });
  return { bytes: data, width: info.width, height: info.height };
}
