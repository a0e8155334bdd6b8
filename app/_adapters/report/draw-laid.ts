import type { PdfImage } from "./draw-photographs.ts";
import type { Laid } from "./lay-over.ts";
import { columnOf, GREY, heightOf, INK, keepTogether, type Style, write } from "./sheet.ts";

type CloseUp = Laid["own"];
type Frame = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

const CAPTION: Style = { face: "sans", size: 7.5, colour: GREY };
const NUMBER: Style = { face: "sans-strong", size: 5.5 };
const GAP = 12;
const HIGHEST = 136;

/** Three pictures in a row: the mark on the object, its reference, and both laid over each other. */
export function drawLaid(
  doc: PDFKit.PDFDocument,
  parent: PDFKit.PDFStructureElement,
  block: Laid,
  images: ReadonlyMap<string, PdfImage>,
): void {
  const { own, reference, over } = block;
  const { left } = columnOf(doc);
  const { width, most, under, captions } = layOut(doc, block);
  keepTogether(doc, most + under + 6);
  const top = doc.y;
  const pictures = [
    { alt: own.alt, region: own.region, draw: (frame: Frame) => drawCloseUp(doc, own, frame, images) },
    {
      alt: reference.alt,
      region: reference.region,
      draw: (frame: Frame) => drawCloseUp(doc, reference, frame, images),
    },
    {
      alt: over.alt,
      region: reference.region,
      draw: (frame: Frame) => {
        const image = images.get(nameOfLaid(block));
        if (image) doc.image(image.source, frame.x, frame.y, { width: frame.width, height: frame.height });
      },
    },
  ];
  pictures.forEach(({ alt, region, draw }, i) => {
    const scale = Math.min(width / region.width, most / region.height);
    const x = left + i * (width + GAP);
    const frame = { x, y: top, width: region.width * scale, height: region.height * scale };
    parent.add(doc.struct("Figure", { alt }, () => draw(frame)));
    const caption = captions[i] ?? "";
    parent.add(
      doc.struct("Caption", {}, () => write(doc, caption, CAPTION, { x, y: top + most + 3, width })),
    );
  });
  doc.x = left;
  doc.y = top + most + under + 10;
}

export function laidHeight(doc: PDFKit.PDFDocument, block: Laid): number {
  const { most, under } = layOut(doc, block);
  return most + under + 10;
}

function layOut(doc: PDFKit.PDFDocument, { own, reference, over }: Laid) {
  const width = (columnOf(doc).width - 2 * GAP) / 3;
  const shapes = [own.region, reference.region];
  const captions = [own.caption, reference.caption, over.caption];
  return {
    ...{ width, captions },
    most: Math.min(HIGHEST, Math.max(...shapes.map((region) => (width * region.height) / region.width))),
    under: Math.max(...captions.map((caption) => heightOf(doc, caption, CAPTION, width))),
  };
}

/** By which name the picture of both is among a report's images. */
export const nameOfLaid = ({ own, reference }: Laid): string => `${own.sha256} on ${reference.sha256}`;

/** The region of a photograph, upright as it turns it, with its places. */
function drawCloseUp(
  doc: PDFKit.PDFDocument,
  { sha256, width, height, region, places }: CloseUp,
  frame: Frame,
  images: ReadonlyMap<string, PdfImage>,
): void {
  const image = images.get(sha256);
  if (!image) return;
  const scale = frame.width / region.width;
  const [middleX, middleY] = [region.x + region.width / 2, region.y + region.height / 2];
  doc.save();
  doc.rect(frame.x, frame.y, frame.width, frame.height).clip();
  doc.translate(frame.x + frame.width / 2, frame.y + frame.height / 2).rotate(region.turn);
  doc.image(image.source, -middleX * scale, -middleY * scale, {
    width: width * scale,
    height: height * scale,
  });
  doc.restore();
  const turn = (region.turn * Math.PI) / 180;
  places.forEach(([px, py], i) => {
    const [right, down] = [(px - middleX) * scale, (py - middleY) * scale];
    const x = frame.x + frame.width / 2 + right * Math.cos(turn) - down * Math.sin(turn);
    const y = frame.y + frame.height / 2 + right * Math.sin(turn) + down * Math.cos(turn);
    drawPlace(doc, x, y, String(i + 1), frame);
  });
}

/** A ring about the place, light within dark so that it shows on both, and its number beside it. */
function drawPlace(doc: PDFKit.PDFDocument, x: number, y: number, number: string, frame: Frame): void {
  doc.circle(x, y, 3).lineWidth(2).strokeColor(INK).stroke();
  doc.circle(x, y, 3).lineWidth(0.9).strokeColor("#ffffff").stroke();
  const beside = x + 14 > frame.x + frame.width ? x - 8.5 : x + 8.5;
  doc.circle(beside, y, 4.2).fillColor("#ffffff").fill();
  write(doc, number, { ...NUMBER, align: "center" }, { x: beside - 4.2, y: y - 3.4, width: 8.4 });
}
