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
      });
    }
  }
  return emblems;
}

/** SVG of an emblem inside a square of side `size` round the origin, in one ink. */
export function drawEmblem(emblem, size, ink) {
  const scale = size / Math.max(emblem.width, emblem.height);
  const dx = -emblem.x - emblem.width / 2;
  const dy = -emblem.y - emblem.height / 2;
  const body = emblem.body.replaceAll("currentColor", ink);
  return `<g fill="${ink}" transform="scale(${scale.toFixed(5)}) translate(${dx} ${dy})">${body}</g>`;
}
