import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import opentype from "opentype.js";

const FILES = {
  abril: "abril-fatface/files/abril-fatface-latin-400-normal.woff",
  slab: "alfa-slab-one/files/alfa-slab-one-latin-400-normal.woff",
  almendra: "almendra-sc/files/almendra-sc-latin-400-normal.woff",
  inline: "bungee-inline/files/bungee-inline-latin-400-normal.woff",
  cinzel: "cinzel/files/cinzel-latin-700-normal.woff",
  cormorant: "cormorant-sc/files/cormorant-sc-latin-700-normal.woff",
  fell: "im-fell-english-sc/files/im-fell-english-sc-latin-400-normal.woff",
  limelight: "limelight/files/limelight-latin-400-normal.woff",
  oswald: "oswald/files/oswald-latin-500-normal.woff",
  playfair: "playfair-display/files/playfair-display-latin-700-normal.woff",
  rye: "rye/files/rye-latin-400-normal.woff",
  typewriter: "special-elite/files/special-elite-latin-400-normal.woff",
  condensed: "stint-ultra-condensed/files/stint-ultra-condensed-latin-400-normal.woff",
  blackletter: "unifrakturcook/files/unifrakturcook-latin-700-normal.woff",
} as const;

export type Face = keyof typeof FILES;

export function isFace(name: string): name is Face {
  return name in FILES;
}

/** One letter as an outline, its baseline at y = 0 and capitals 1 high (y down). */
export interface Letter {
  outline: string;
  advance: number;
}

const require = createRequire(import.meta.url);
const loaded = new Map<Face, { font: opentype.Font; unit: number }>();

function load(face: Face): { font: opentype.Font; unit: number } {
  const kept = loaded.get(face);
  if (kept) return kept;
  const bytes = readFileSync(require.resolve(`@fontsource/${FILES[face]}`));
  const font = opentype.parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  const capital = font.charToGlyph("H").getBoundingBox();
  const made = { font, unit: font.unitsPerEm / (capital.y2 - capital.y1) };
  loaded.set(face, made);
  return made;
}

const letters = new Map<string, Letter>();

/** The letters of a text. Refuses a character that the face does not have. */
export function lettersOf(text: string, face: Face): Letter[] {
  const { font, unit } = load(face);
  return [...text].map((character) => {
    const key = `${face} ${character}`;
    const kept = letters.get(key);
    if (kept) return kept;
    const glyph = font.charToGlyph(character);
    if (glyph.index === 0) {
      throw new Error(
        `text: must use characters that ${face} has. Received ${JSON.stringify(character)} in "${text}".`,
      );
    }
    const made = {
      outline: glyph.getPath(0, 0, unit).toPathData(4),
      advance: ((glyph.advanceWidth ?? font.unitsPerEm / 2) / font.unitsPerEm) * unit,
    };
    letters.set(key, made);
    return made;
  });
}
