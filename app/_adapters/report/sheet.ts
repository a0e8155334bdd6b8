import { type Face, runsOf } from "./fonts.ts";

export const INK = "#1d1f1e";
export const GREY = "#5b605d";
export const LINE = "#b9beb9";
/** What photographs lie on. */
export const MAT = "#dcddda";
export const ACCENT = "#1f6f5c";

export type Style = {
  readonly face: Face;
  readonly size: number;
  readonly colour?: string;
  readonly gap?: number;
  readonly align?: "center";
};

/** The part of a page between its margins. */
export function columnOf({ page }: PDFKit.PDFDocument) {
  const { left, right, top, bottom } = page.margins;
  return {
    left,
    top,
    width: page.width - left - right,
    height: page.height - top - bottom,
    foot: page.height - bottom,
  };
}

/** Goes on to the next page where less than so much of this one is left. */
export function keepTogether(doc: PDFKit.PDFDocument, height: number): void {
  if (doc.y > columnOf(doc).top && !fits(doc, height)) doc.addPage();
}

/** Is so much of the page left? */
export const fits = (doc: PDFKit.PDFDocument, height: number): boolean =>
  doc.y + height <= columnOf(doc).foot;

type Place = { readonly x: number; readonly y: number; readonly width: number };

/** Writes a text, in the font of each script, in a column; the place is left below it. */
export function write(doc: PDFKit.PDFDocument, text: string, style: Style, place?: Place): void {
  const { left, width } = columnOf(doc);
  const { x, y, width: wide } = place ?? { x: left, y: doc.y, width };
  const runs = runsOf(style.face, text);
  doc.fillColor(style.colour ?? INK);
  runs.forEach(({ font, scale, text: part }, i) => {
    const continued = i < runs.length - 1;
    doc.font(font).fontSize(style.size * scale);
    const how = { width: wide, continued, lineGap: 1.5, ...(style.align ? { align: style.align } : {}) };
    if (i === 0) doc.text(part, x, y, how);
    else doc.text(part, how);
  });
  doc.x = left;
  doc.y += style.gap ?? 0;
}

/** How high a text stands in a column. */
export function heightOf(
  doc: PDFKit.PDFDocument,
  text: string,
  { face, size }: Style,
  width: number,
): number {
  const fonts = new Map(runsOf(face, text).map(({ font, scale }) => [font, size * scale]));
  // Of several fonts the widest decides: rather too much room than too little.
  const heights = [...fonts].map(([font, points]) =>
    doc.font(font).fontSize(points).heightOfString(text, { width, lineGap: 1.5 }),
  );
  return Math.max(0, ...heights);
}

/** Draws what is no content: readers that go by tags pass over it. */
export function decorate(doc: PDFKit.PDFDocument, draw: () => void): void {
  doc.markContent("Artifact", { type: "Layout" });
  draw();
  doc.endMarkedContent();
}

/** Reads an image once for all the places in which it stands; known to the library, not to its types. */
export function openImage(doc: PDFKit.PDFDocument, bytes: Buffer): PDFKit.Mixins.ImageSrc {
  return (doc as PDFKit.PDFDocument & { openImage(bytes: Buffer): PDFKit.Mixins.ImageSrc }).openImage(bytes);
}
