import sharp from "sharp";

/** A photograph, as good as drawn: a tin steamer on a grey mat with a scale of 100 mm under it. */
export function pictureOfBoat(seed: number, width = 1600, height = 1100): Promise<Buffer> {
  const red = `hsl(${(seed * 47) % 360} 48% 38%)`;
  const ribs = Array.from({ length: 9 }, (_, i) => `<circle cx="${330 + i * 105}" cy="640" r="15"/>`);
  const strokes = Array.from(
    { length: 5 },
    (_, i) => `<rect x="${500 + i * 120}" y="960" width="60" height="16"/>`,
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1600 1100" width="${width}" height="${height}">
    <defs>
      <linearGradient id="hull" x2="0" y2="1"><stop stop-color="${red}"/><stop offset="1" stop-color="#2a1512"/></linearGradient>
      <radialGradient id="mat"><stop stop-color="#c9cac7"/><stop offset="1" stop-color="#8f918d"/></radialGradient>
      <linearGradient id="tin" x2="1"><stop stop-color="#e9dcb4"/><stop offset=".4" stop-color="#f7f0d6"/><stop offset="1" stop-color="#a08f5e"/></linearGradient>
    </defs>
    <rect width="1600" height="1100" fill="url(#mat)"/>
    <ellipse cx="820" cy="835" rx="640" ry="50" fill="#00000055"/>
    <path d="M180 560 H1440 L1330 800 Q1310 830 1270 830 H360 Q300 830 270 780 Z" fill="url(#hull)"/>
    <path d="M180 560 H1440 L1431 580 H188 Z" fill="#e3c877"/>
    <g fill="#d9d2bb" stroke="#43342a" stroke-width="6">${ribs.join("")}</g>
    <path d="M430 440 H1180 V560 H430 Z" fill="url(#tin)"/>
    <path d="M560 340 H960 V440 H560 Z" fill="url(#tin)"/>
    <path d="M690 150 H800 V340 H690 Z" fill="${red}"/><path d="M690 190 H800 V225 H690 Z" fill="#f1e6c2"/>
    <path d="M1240 170 V560 M1240 180 L1010 340 M340 250 V560" stroke="#4b4034" stroke-width="7" fill="none"/>
    <path d="M340 255 l120 35 l-120 35 z" fill="#31557a"/>
    <g fill="#111">${strokes.join("")}</g><path d="M500 976 H1100" stroke="#111" stroke-width="4"/>
  </svg>`;
  const noise = { type: "gaussian" as const, mean: 128, sigma: 9 };
  const grain = sharp({ create: { width, height, channels: 3, background: "#808080", noise } })
    .png()
    .toBuffer();
  return grain.then((input) =>
    sharp(Buffer.from(svg))
      .composite([{ input, blend: "soft-light" }])
      .jpeg({ quality: 82 })
      .toBuffer(),
  );
}
