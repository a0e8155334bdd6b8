import sharp from "sharp";
import { FILTERS } from "./paper-texture.ts";
import { textPath } from "./text-path.ts";

/** Pixels per millimetre, so that the hull, 1,225 pixels long, is 245 mm. */
const SCALE = 5;
const [WIDTH, HEIGHT] = [1600, 1180];

/** The boat is seen from its port side, or its starboard side, which is the same turned round and without the key. */
export async function drawBoat(side: "port" | "starboard"): Promise<Buffer> {
  const boat = `<g ${side === "starboard" ? `transform="translate(${WIDTH} 0) scale(-1 1)"` : ""}>
    ${hull(side)}${upperWorks()}</g>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}">${FILTERS}${GRADIENTS}
    <rect width="100%" height="100%" fill="url(#table)"/>
    <rect width="100%" height="100%" filter="url(#cloud)" opacity="0.25"/>
    <ellipse cx="800" cy="962" rx="640" ry="26" fill="#1b1d20" opacity="0.6" filter="url(#soft)"/>
    <g filter="url(#focus)">${boat}</g>
    ${ruler(190, 1040)}
    <rect width="100%" height="100%" filter="url(#grain)" opacity="0.35"/></svg>`;
  return sharp(Buffer.from(svg)).webp({ quality: 84, effort: 5 }).toBuffer();
}

const GRADIENTS = `<defs>
  <linearGradient id="table" x1="0" y1="0" x2="0.25" y2="1">
    <stop offset="0" stop-color="#8e9296"/><stop offset="0.62" stop-color="#b9bab8"/><stop offset="1" stop-color="#d3d2cd"/>
  </linearGradient>
  <linearGradient id="side" x1="0" y1="0" x2="0" y2="1">
    <stop offset="0" stop-color="#fff" stop-opacity="0.42"/><stop offset="0.16" stop-color="#fff" stop-opacity="0.06"/>
    <stop offset="0.55" stop-color="#000" stop-opacity="0.08"/><stop offset="1" stop-color="#000" stop-opacity="0.55"/>
  </linearGradient>
  <linearGradient id="round" x1="0" y1="0" x2="1" y2="0">
    <stop offset="0" stop-color="#000" stop-opacity="0.5"/><stop offset="0.35" stop-color="#fff" stop-opacity="0.4"/>
    <stop offset="0.55" stop-color="#fff" stop-opacity="0.05"/><stop offset="1" stop-color="#000" stop-opacity="0.6"/>
  </linearGradient>
</defs>`;

const HULL =
  "M188 690 C560 742 1050 742 1412 640 C1392 760 1330 880 1262 940 L330 940 C262 900 210 800 188 690Z";

function hull(side: "port" | "starboard"): string {
  const ports = [430, 540, 650, 960, 1070]
    .map(
      (x) =>
        `<circle cx="${x}" cy="795" r="21" fill="#c9a24a"/><circle cx="${x}" cy="795" r="13" fill="#22313a"/>`,
    )
    .join("");
  const key = `<g fill="none" stroke="#a8863a" stroke-width="11">
    <path d="M800 800v-6" stroke-width="26"/><circle cx="775" cy="800" r="24"/><circle cx="825" cy="800" r="24"/></g>
    <circle cx="800" cy="800" r="9" fill="#4d3b14"/>`;
  return `<clipPath id="within"><path d="${HULL}"/></clipPath>
    <g filter="url(#rust)"><g filter="url(#worn)"><g clip-path="url(#within)">
      <path d="${HULL}" fill="#2a6a6d"/>
      <path d="M150 868h1300v90H150Z" fill="#8f2f24"/>
      <path d="M150 856h1300v13H150Z" fill="#f0e3bd"/>
      <path d="M180 708 C560 762 1050 762 1420 658" fill="none" stroke="#f0e3bd" stroke-width="11"/>
      <path d="M180 728 C560 782 1050 782 1420 678" fill="none" stroke="#c08a2d" stroke-width="5"/>
      ${ports}${side === "port" ? key : ""}
      ${name(side)}
    </g></g></g>
    <path d="${HULL}" fill="url(#side)"/>
    <path d="M188 690 C560 742 1050 742 1412 640" fill="none" stroke="#d9d6cc" stroke-width="4" opacity="0.8"/>`;
}

/** Near the bow; on the starboard side it is turned round once more, so that it can be read. */
function name(side: "port" | "starboard"): string {
  const letters = textPath("THISTLEDOWN", "slab", 18, "#f0e3bd");
  return side === "port"
    ? `<g transform="translate(1125 757) rotate(-6)">${letters}</g>`
    : `<g transform="translate(1352 731) rotate(-6) scale(-1 1)">${letters}</g>`;
}

function upperWorks(): string {
  const windows = [560, 640, 720]
    .map(
      (x) =>
        `<rect x="${x}" y="604" width="52" height="42" rx="4" fill="#3d4f57" stroke="#8f2f24" stroke-width="6"/>`,
    )
    .join("");
  return `<g filter="url(#worn)">
      <path d="M505 566 H815 L836 716 C730 722 600 722 486 714Z" fill="#efdfb4"/>
      <path d="M488 552 H832 V572 H488Z" fill="#8f2f24"/>${windows}
    </g>
    <path d="M505 566 H815 L836 716 C730 722 600 722 486 714Z" fill="url(#side)" opacity="0.7"/>
    <g filter="url(#rust)"><path d="M880 430 H968 L976 712 H872Z" fill="#c9962f"/><path d="M879 430H969L972 500H877Z" fill="#2b2622"/></g>
    <path d="M880 430 H968 L976 712 H872Z" fill="url(#round)"/>
    <ellipse cx="924" cy="430" rx="44" ry="9" fill="#131110"/>
    <g stroke="#5c4a2c" fill="none"><path d="M1130 704 L1122 135" stroke-width="11"/>
      <path d="M1122 150 L1372 650 M1122 150 L934 428" stroke-width="2.5" stroke="#2b2622"/></g>
    <path d="M1122 140 L1040 168 L1121 200Z" fill="#a8321f"/>
    <g stroke="#9a958a" stroke-width="4" fill="none"><path d="M1180 690v-62 M1250 676v-60 M1320 660v-58 M1180 632 C1230 626 1280 616 1322 604"/></g>`;
}

/** A rule of 100 mm, its centimetres numbered. */
function ruler(x: number, y: number): string {
  const ticks = Array.from({ length: 101 }, (_, mm) => {
    const long = mm % 10 === 0 ? 34 : mm % 5 === 0 ? 24 : 15;
    return `<path d="M${x + 20 + mm * SCALE} ${y}v${long}" stroke="#1d1d1d" stroke-width="1.6"/>`;
  });
  const numbers = Array.from(
    { length: 11 },
    (_, cm) =>
      `<g transform="translate(${x + 12 + cm * 10 * SCALE} ${y + 62})">${textPath(String(cm), "oswald", 18, "#1d1d1d")}</g>`,
  );
  return `<rect x="${x + 4}" y="${y + 6}" width="540" height="82" fill="#000" opacity="0.35" filter="url(#soft)"/>
    <rect x="${x}" y="${y}" width="540" height="80" fill="#f3f1ea"/>${ticks.join("")}${numbers.join("")}`;
}
