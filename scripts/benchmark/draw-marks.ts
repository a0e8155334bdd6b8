import sharp from "sharp";
import { type Random, randomFrom } from "../../seed/render/random.ts";

/** How one photograph of a drawing differs from another. */
type View = { readonly turn: number; readonly blur: number; readonly ground: string; readonly ink: string };

const GROUNDS = ["#b9a27c", "#8f9296", "#d8cfbf", "#6d5a48", "#a9b0a4"] as const;
const INKS = ["#2b2622", "#3d3a5c", "#f4efe2", "#5b1f1a"] as const;

/** A mark that nobody ever used, the same for the same number: a frame, and strokes and shapes inside it. */
function drawMark(number: number): string {
  const random = randomFrom(`benchmark mark ${number}`);
  const shapes = Array.from({ length: 2 + Math.floor(random.next() * 4) }, () => drawShape(random));
  return `${drawFrame(random)}${shapes.join("")}`;
}

/** A photograph of a drawing as a reference shows it: nearly upright, 360 pixels. */
export function photographReference(number: number, photograph: number): Promise<Buffer> {
  const random = randomFrom(`benchmark photograph ${number} ${photograph}`);
  const view = { ...pickColours(random), turn: random.between(-8, 8), blur: random.between(0.4, 1.4) };
  return render(drawMark(number), 360, view).then((image) => image.jpeg({ quality: 85 }).toBuffer());
}

/** One to look up: 12 megapixels as from a telephone, turned anyhow; the mark is in the box that comes with it. */
export async function photographQuery(number: number) {
  const random = randomFrom(`benchmark query ${number}`);
  const view = { ...pickColours(random), turn: random.between(0, 360), blur: random.between(1, 3) };
  const side = 1100;
  const mark = await (await render(drawMark(number), side, view)).png().toBuffer();
  const box = { x: 1450, y: 950, width: side, height: side };
  const bytes = await sharp({ create: { width: 4000, height: 3000, channels: 3, background: view.ground } })
    .composite([{ input: mark, left: box.x, top: box.y }])
    .jpeg({ quality: 90 })
    .toBuffer();
  return { bytes, box };
}

const pickColours = (random: Random) => ({ ground: random.pick(GROUNDS), ink: random.pick(INKS) });

async function render(drawing: string, side: number, { turn, blur, ground, ink }: View) {
  // What reads photographs of strangers switches this loader off for the whole process; these drawings are ours.
  sharp.unblock({ operation: ["VipsForeignLoadSvg"] });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${side}" height="${side}" viewBox="-130 -130 260 260">
    <rect x="-130" y="-130" width="260" height="260" fill="${ground}"/>
    <g transform="rotate(${turn})" fill="none" stroke="${ink}" stroke-width="7">${drawing.replaceAll("INK", ink)}</g></svg>`;
  return sharp(Buffer.from(svg))
    .blur(blur)
    .composite([{ input: await noiseOf(side), blend: "soft-light" }])
    .removeAlpha();
}

const noises = new Map<number, Promise<Buffer>>();

/** Grain laid over every photograph of a size; made once. */
function noiseOf(side: number): Promise<Buffer> {
  const noise = { type: "gaussian" as const, mean: 128, sigma: 14 };
  const size = { width: side, height: side, channels: 3 as const, background: "#000" };
  const made =
    noises.get(side) ??
    sharp({ create: { ...size, noise } })
      .png({ compressionLevel: 1 })
      .toBuffer();
  noises.set(side, made);
  return made;
}

function drawFrame(random: Random): string {
  return random.pick([
    '<circle r="105"/>',
    '<circle r="105"/><circle r="90" stroke-width="3"/>',
    '<ellipse rx="110" ry="75"/>',
    '<rect x="-100" y="-70" width="200" height="140"/>',
    '<rect x="-90" y="-90" width="180" height="180" rx="30"/>',
    '<path d="M-90 -95 H90 V10 Q90 80 0 108 Q-90 80 -90 10 Z"/>',
    '<path d="M0 -110 L110 0 L0 110 L-110 0 Z"/>',
    "",
  ]);
}

function drawShape(random: Random): string {
  const x = random.between(-45, 45);
  const y = random.between(-45, 45);
  const size = random.between(18, 48);
  const place = `transform="translate(${x} ${y}) rotate(${random.between(0, 360)})"`;
  const filled = random.chance(0.5) ? 'fill="INK"' : "";
  const points = 3 + Math.floor(random.next() * 6);
  const inner = random.between(0.3, 0.95);
  const corners = Array.from({ length: points * 2 }, (_, i) => {
    const radius = i % 2 === 0 ? size : size * inner;
    const angle = (Math.PI * i) / points;
    return `${radius * Math.cos(angle)},${radius * Math.sin(angle)}`;
  });
  const stroke = Array.from(
    { length: 4 },
    () => `${random.between(-size, size)},${random.between(-size, size)}`,
  );
  return random.pick([
    `<polygon points="${corners.join(" ")}" ${filled} ${place}/>`,
    `<polyline points="${stroke.join(" ")}" stroke-width="${random.between(4, 12)}" ${place}/>`,
    `<circle r="${size * 0.7}" ${filled} ${place}/>`,
    `<path d="M${-size} 0 Q0 ${-size * 1.6} ${size} 0 Q0 ${size * 0.6} ${-size} 0 Z" ${filled} ${place}/>`,
  ]);
}
