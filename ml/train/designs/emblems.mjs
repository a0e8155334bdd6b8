/** The emblems of one split: whole open sets, without what the demo reserves and without interface icons. */
import { readFileSync } from "node:fs";

const here = new URL(".", import.meta.url);
export const sources = JSON.parse(readFileSync(new URL("sources.json", here), "utf8"));
const reserved = JSON.parse(readFileSync(new URL("reserved.json", here), "utf8"));

const packageFile = (set) =>
  JSON.parse(readFileSync(new URL(`../node_modules/@iconify-json/${set}/icons.json`, here), "utf8"));

/** @returns {Map<string, {body: string, x: number, y: number, width: number, height: number}>} by "set:name" */
export function emblemsOf(split) {
  const emblems = new Map();
  for (const source of sources.emblemSets) {
    if (source.split !== split) continue;
    const drop = new Set([...sources.dropWords, ...source.dropWords]);
    const kept = new Set(reserved.emblems[source.set] ?? []);
    const only = new RegExp(source.only ?? ".");
    const file = packageFile(source.set);
    for (const [name, icon] of Object.entries(file.icons)) {
      if (!only.test(name) || kept.has(name) || drop.has(name)) continue;
      if (name.split("-").some((word) => drop.has(word))) continue;
      emblems.set(`${source.set}:${name}`, {
        body: icon.body,
        x: icon.left ?? file.left ?? 0,
        y: icon.top ?? file.top ?? 0,
        width: icon.width ?? file.width ?? 16,
        height: icon.height ?? file.height ?? 16,
        colours: source.colours ?? false,
      });
    }
  }
  return emblems;
}

/** How a coloured picture becomes one ink: which share of red, green and blue counts as light. */
const looks = [[0.1, 0.1, 0.8], [0.75, 0.15, 0.1], [0.3, 0.6, 0.1]];

/** Where the picture is darker than the middle, the ink; elsewhere nothing. */
function inOneInk(ink, look) {
  const value = ink === "#fff" ? 1 : 0;
  const [r, g, b] = looks[look];
  const matrix = `0 0 0 0 ${value} 0 0 0 0 ${value} 0 0 0 0 ${value} ${-r} ${-g} ${-b} 1 0`;
  return `<filter id="ink${look}${value}" x="0" y="0" width="1" height="1" color-interpolation-filters="sRGB"><feColorMatrix values="${matrix}"/><feComponentTransfer><feFuncA type="discrete" tableValues="0 0 0 0 0 1 1 1 1 1"/></feComponentTransfer></filter>`;
}

/** SVG of an emblem inside a square of side `size` round the origin, in one ink. `look` says how colours are read. */
export function drawEmblem(emblem, size, ink, look = 0) {
  const scale = size / Math.max(emblem.width, emblem.height);
  const dx = -emblem.x - emblem.width / 2;
  const dy = -emblem.y - emblem.height / 2;
  const at = `transform="scale(${scale.toFixed(5)}) translate(${dx} ${dy})"`;
  if (!emblem.colours) return `<g fill="${ink}" ${at}>${emblem.body.replaceAll("currentColor", ink)}</g>`;
  return `${inOneInk(ink, look)}<g filter="url(#ink${look}${ink === "#fff" ? 1 : 0})"><g ${at}>${emblem.body}</g></g>`;
}
