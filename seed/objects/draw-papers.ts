import sharp from "sharp";
import { FILTERS } from "./paper-texture.ts";
import { handPath, textPath } from "./text-path.ts";

const INK = "#2b2f55";

/** A bill of the shop, its printed head and what was written below. */
export function drawReceipt(): Promise<Buffer> {
  const row = (y: number, what: string, sum: string) =>
    `${at(150, y, handPath(what, 58, INK))}${at(930, y, handPath(sum, 58, INK))}<path d="M110 ${y + 20}H1090" stroke="#9a8f77" stroke-width="2"/>`;
  return photographed(
    1200,
    860,
    "#e9dcb9",
    `${at(120, 130, textPath("PETHERICK'S BAZAAR", "abril", 50, "#23306a"))}
     ${at(120, 190, textPath("QUAY STREET, THRINEMOUTH", "fell", 24, "#23306a"))}
     ${at(120, 232, textPath("TOYS OF EVERY MAKER", "fell", 18, "#23306a"))}
     <path d="M110 262H1090M110 268H1090" stroke="#23306a" stroke-width="2"/>
     ${at(700, 340, handPath("19 December 1924", 58, INK))}${at(120, 340, handPath("Mrs Edda Trell", 58, INK))}
     ${row(450, "1 clockwork steamer, Brandreth's", "14 / 6")}${row(540, "1 box paper flags", "6 d")}${row(630, "", "15 / -")}
     <g transform="rotate(-9 820 740)">${at(640, 760, textPath("PAID", "rye", 74, "#a33a2a"))}</g>`,
  );
}

/** A page of an album: a snapshot at a pond, and what is written under it. */
export function drawAlbumPage(): Promise<Buffer> {
  const snapshot = `<g transform="translate(270 110) rotate(-1.5)">
    <rect x="6" y="8" width="700" height="520" fill="#000" opacity="0.5" filter="url(#soft)"/>
    <rect width="700" height="520" fill="#e8e0cf"/>
    <g transform="translate(30 30)"><rect width="640" height="460" fill="#b8ad97"/>
      <path d="M0 210 Q160 150 320 200 T640 180V0H0Z" fill="#d8cfbb"/><path d="M0 200q60-70 130-18 70-70 140 2 90-60 180-6 90-50 190-10v60H0Z" fill="#7b725f"/>
      <path d="M0 262H640V460H0Z" fill="#968b76"/>${ripples()}
      <g fill="#453e33"><path d="M120 300q-8-120 34-126 42 6 36 126Z"/><circle cx="154" cy="148" r="25"/><path d="M126 140q28-44 58 0l10 6h-78Z"/>
        <path d="M168 210 L268 292 L258 300 L160 232Z"/></g>
      <g transform="translate(286 262) scale(0.17)" fill="#3a342b"><path d="M0 130C370 182 860 182 1224 80C1204 200 1150 250 1100 280L130 280C80 250 22 200 0 130Z"/>
        <path d="M300 10H640V160H290Z" fill="#c9bfa8"/><path d="M690-120H780V150H690Z"/><path d="M930-420h10V140h-10Z"/></g>
    </g></g>`;
  return photographed(
    1240,
    880,
    "#5b5148",
    `${snapshot}${at(320, 720, handPath("Jonas with the Thistledown,", 70, "#efe7d6"))}${at(430, 800, handPath("the pond, summer 1925", 70, "#efe7d6"))}`,
  );
}

/** The first page of a letter. */
export function drawLetter(lines: readonly string[]): Promise<Buffer> {
  const written = lines.map((line, i) => at(100 + ((i * 37) % 11), 150 + i * 66, handPath(line, 45, INK)));
  return photographed(1200, 210 + lines.length * 66, "#efe9da", written.join(""));
}

const at = (x: number, y: number, inside: string) => `<g transform="translate(${x} ${y})">${inside}</g>`;

const ripples = () =>
  Array.from(
    { length: 26 },
    (_, i) =>
      `<path d="M${(i * 173) % 560} ${280 + ((i * 61) % 170)}h${40 + ((i * 29) % 60)}" stroke="#c4baa4" stroke-width="2" opacity="0.7"/>`,
  ).join("");

/** A sheet on a dark table, folded once, aged and not quite straight. */
function photographed(width: number, height: number, paper: string, inside: string): Promise<Buffer> {
  const [w, h] = [width + 160, height + 140];
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}">${FILTERS}
    <rect width="100%" height="100%" fill="#3c3a37"/>
    <g transform="translate(80 70) rotate(-0.7 ${width / 2} ${height / 2})">
      <rect x="8" y="12" width="${width}" height="${height}" fill="#000" opacity="0.6" filter="url(#soft)"/>
      <rect width="${width}" height="${height}" fill="${paper}"/>
      <rect width="${width}" height="${height}" filter="url(#cloud)" opacity="0.55"/>
      <path d="M0 ${height / 2}H${width}" stroke="#fff" stroke-opacity="0.35" stroke-width="3"/>
      <path d="M0 ${height / 2 + 3}H${width}" stroke="#000" stroke-opacity="0.18" stroke-width="4"/>
      <g filter="url(#focus)" opacity="0.93">${inside}</g>
    </g>
    <rect width="100%" height="100%" filter="url(#grain)" opacity="0.3"/></svg>`;
  return sharp(Buffer.from(svg)).webp({ quality: 80, effort: 5 }).toBuffer();
}
