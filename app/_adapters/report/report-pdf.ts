import PDFDocument from "pdfkit";
import sharp from "sharp";
import { blocksOf, type Paper, type Report } from "#core/object-files/report/blocks";
import { MOST_PAGES, ROOMS } from "#core/object-files/report/room";
import type { Reports } from "../../_usecases/ports/reports.ts";
import { beginningOf, drawBlocks, STYLES } from "./draw-block.ts";
import { nameOfLaid } from "./draw-laid.ts";
import type { PdfImage } from "./draw-photographs.ts";
import { registerFonts } from "./fonts.ts";
import { layOver } from "./lay-over.ts";
import { columnOf, keepTogether, openImage, write } from "./sheet.ts";

/** Draws a report: real text in embedded fonts, tagged, images as JPEG, charts as lines. */
export const drawReport: Reports["pdf"] = async (report, images, paper, words) => {
  const pictures = await readImages(report(ROOMS[0]), images);
  for (const room of ROOMS) {
    const { pages, bytes } = await draw(report(room), pictures, paper, words);
    if (pages <= MOST_PAGES || room === ROOMS.at(-1)) return bytes;
  }
  throw new Error("ROOMS must not be empty.");
};

/** An image made ready for any document. */
type Picture = { readonly bytes: Buffer; readonly width: number; readonly height: number };
type Drawn = { readonly pages: number; readonly bytes: Uint8Array };

async function draw(
  report: Report<string>,
  pictures: ReadonlyMap<string, Picture>,
  paper: Paper,
  words: Parameters<Reports["pdf"]>[3],
): Promise<Drawn> {
  const doc = new PDFDocument({
    size: paper === "a4" ? "A4" : "LETTER",
    margins: { top: 48, bottom: 56, left: 54, right: 54 },
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
  // Opened once, an image is embedded once, wherever it stands.
  const opened = [...pictures].map(([name, { bytes, ...shape }]): [string, PdfImage] => [
    name,
    { ...shape, source: openImage(doc, bytes) },
  ]);
  drawSections(doc, report, new Map(opened));
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
  root.add(doc.struct("P", {}, () => write(doc, subtitle, { ...STYLES.note, gap: 8 })));
  sections.forEach(({ heading, blocks }, i) => {
    const section = doc.struct("Sect");
    root.add(section);
    if (i > 0) doc.y += 9;
    keepTogether(doc, HEADING + beginningOf(doc, blocks, images));
    section.add(doc.struct("H2", {}, () => write(doc, heading, STYLES.section)));
    drawBlocks(doc, section, blocks, images);
    section.end();
  });
  root.end();
}

/** How high a section's heading stands. */
const HEADING = 22;

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
): Promise<ReadonlyMap<string, Picture>> {
  const read = new Map<string, Picture>();
  for (const [sha256, bytes] of images) read.set(sha256, await readImage(bytes));
  for (const block of blocksOf(report)) {
    if (block.is !== "laid") continue;
    const [own, reference] = [images.get(block.own.sha256), images.get(block.reference.sha256)];
    if (own && reference) read.set(nameOfLaid(block), await readImage(await layOver(block, own, reference)));
  }
  return read;
}

async function readImage(bytes: Uint8Array): Promise<Picture> {
  const { data, info } = await sharp(bytes)
    .resize({ width: 1600, height: 1600, fit: "inside", withoutEnlargement: true })
    .flatten({ background: "#ffffff" })
    .jpeg({ quality: 86 })
    .toBuffer({ resolveWithObject: true });
  return { bytes: data, width: info.width, height: info.height };
}
