import type { ReportBlock } from "#core/object-files/report/blocks";
import { columnOf, decorate, GREY, heightOf, keepTogether, MAT, type Style, write } from "./sheet.ts";

/** An image that a document holds. */
export type PdfImage = {
  readonly source: PDFKit.Mixins.ImageSrc;
  readonly width: number;
  readonly height: number;
};
type Photographs = Extract<ReportBlock<string>, { readonly is: "photographs" }>;
type Images = ReadonlyMap<string, PdfImage>;

const CAPTION: Style = { face: "sans", size: 7.5, colour: GREY };
const GAP = 12;

/** How high a photograph is at most, by how many there is room for in its row. */
const HIGHEST = { 2: 136, 3: 130, 4: 84 } as const;
/** The part of the page that one across it takes. */
const LARGE = 0.34;

/** One large, or several side by side, each with its credit under it. */
export function drawPhotographs(
  doc: PDFKit.PDFDocument,
  parent: PDFKit.PDFStructureElement,
  block: Photographs,
  images: Images,
): void {
  const { left } = columnOf(doc);
  const { rows, wide } = layOut(doc, block, images);
  for (const { high, row } of rows) {
    keepTogether(doc, high);
    const top = doc.y;
    row.forEach(({ image, drawn, alt, caption }, k) => {
      const x = left + k * (wide + GAP);
      const inset = block.size === "large" ? (wide - drawn.width) / 2 : 0;
      if (inset > 0) decorate(doc, () => doc.rect(x, top, wide, drawn.height).fillColor(MAT).fill());
      parent.add(
        doc.struct("Figure", { alt: alt || caption }, () => doc.image(image.source, x + inset, top, drawn)),
      );
      if (caption !== "")
        parent.add(
          doc.struct("Caption", {}, () =>
            write(doc, caption, CAPTION, { x, y: top + drawn.height + 3, width: wide }),
          ),
        );
    });
    doc.x = left;
    doc.y = top + high + 6;
  }
}

export const firstRowHeight = (doc: PDFKit.PDFDocument, block: Photographs, images: Images): number =>
  layOut(doc, block, images).rows[0]?.high ?? 0;

function layOut(doc: PDFKit.PDFDocument, { photographs, size }: Photographs, images: Images) {
  const shown = photographs.flatMap((each) => {
    const image = images.get(each.sha256);
    return image ? [{ ...each, image }] : [];
  });
  const across = size === "large" ? 1 : size === "row" ? 4 : shown.length > 2 ? 3 : 2;
  const most = across === 1 ? doc.page.height * LARGE : HIGHEST[across];
  const wide = (columnOf(doc).width - GAP * (across - 1)) / across;
  const all = shown.map((each) => {
    const scale = Math.min(wide / each.image.width, most / each.image.height);
    return {
      ...each,
      drawn: { width: each.image.width * scale, height: each.image.height * scale },
      under: heightOf(doc, each.caption, CAPTION, wide),
    };
  });
  const rows = Array.from({ length: Math.ceil(all.length / across) }, (_, i) => {
    const row = all.slice(i * across, (i + 1) * across);
    return { row, high: Math.max(...row.map(({ drawn, under }) => drawn.height + under + 6)) };
  });
  return { wide, rows };
}
