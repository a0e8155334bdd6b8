import type { ReportBlock } from "#core/object-files/report/blocks";
import { columnOf, GREY, heightOf, keepTogether, type Style, write } from "./sheet.ts";

/** An image as a PDF holds it. */
export type PdfImage = { readonly bytes: Buffer; readonly width: number; readonly height: number };
type Photographs = Extract<ReportBlock<string>, { readonly is: "photographs" }>;

const CAPTION: Style = { face: "sans", size: 7.5, colour: GREY };
const GAP = 12;

/** One large, or several side by side, each with its credit under it. */
export function drawPhotographs(
  doc: PDFKit.PDFDocument,
  parent: PDFKit.PDFStructureElement,
  { photographs, size }: Photographs,
  images: ReadonlyMap<string, PdfImage>,
): void {
  const shown = photographs.flatMap((each) => {
    const image = images.get(each.sha256);
    return image ? [{ ...each, image }] : [];
  });
  const { left, width } = columnOf(doc);
  const perRow = size === "large" ? 1 : Math.min(3, Math.max(2, shown.length));
  const most = size === "large" ? 330 : 170;
  const wide = (width - GAP * (perRow - 1)) / perRow;
  for (let i = 0; i < shown.length; i += perRow) {
    const row = shown.slice(i, i + perRow).map((each) => {
      const scale = Math.min(wide / each.image.width, most / each.image.height);
      return {
        ...each,
        drawn: { width: each.image.width * scale, height: each.image.height * scale },
        under: heightOf(doc, each.caption, CAPTION, wide),
      };
    });
    const high = Math.max(...row.map(({ drawn, under }) => drawn.height + under + 6));
    keepTogether(doc, high);
    const top = doc.y;
    row.forEach(({ image, drawn, alt, caption }, k) => {
      const x = left + k * (wide + GAP);
      parent.add(doc.struct("Figure", { alt: alt || caption }, () => doc.image(image.bytes, x, top, drawn)));
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
