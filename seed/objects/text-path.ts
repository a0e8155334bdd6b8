import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import opentype from "opentype.js";
import { type Face, lettersOf } from "../designs/typeface.ts";

const require = createRequire(import.meta.url);
let hand: opentype.Font | undefined;

/** Words as outlines, their baseline at y = 0. @param height of capitals, in pixels */
export function textPath(words: string, face: Face, height: number, colour: string): string {
  let x = 0;
  const letters = lettersOf(words, face).map(({ outline, advance }) => {
    const placed = `<path transform="translate(${(x * height).toFixed(1)} 0) scale(${height})" d="${outline}"/>`;
    x += advance * 1.04;
    return placed;
  });
  return `<g fill="${colour}">${letters.join("")}</g>`;
}

/** A line written by hand, its baseline at y = 0. @param size of the type, in pixels */
export function handPath(words: string, size: number, colour: string): string {
  const file = require.resolve("@fontsource/la-belle-aurore/files/la-belle-aurore-latin-400-normal.woff");
  if (!hand) {
    const bytes = readFileSync(file);
    hand = opentype.parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  }
  return `<path fill="${colour}" d="${hand.getPath(words, 0, 0, size).toPathData(2)}"/>`;
}
