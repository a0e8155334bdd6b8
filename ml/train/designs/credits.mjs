/** Prints, as Markdown, every emblem set and font family that designs are drawn from, with its licence. */
import { readFileSync } from "node:fs";
import { sources } from "./emblems.mjs";

const here = new URL(".", import.meta.url);
const packageOf = (name) => JSON.parse(readFileSync(new URL(`../node_modules/${name}/package.json`, here), "utf8"));

console.log("| emblem set | by | licence | package | split |\n| --- | --- | --- | --- | --- |");
for (const { set, author, licence, split } of sources.emblemSets)
  console.log(`| ${set} | ${author} | ${licence} | @iconify-json/${set} ${packageOf(`@iconify-json/${set}`).version} | ${split} |`);

const splits = ["train", "validation", "test"];
for (const split of splits) {
  const families = [...sources.fonts[split], ...sources.seals[split].map((seal) => seal.family)];
  const byLicence = families.reduce((groups, family) => {
    const licence = packageOf(`@fontsource/${family}`).license;
    return groups.set(licence, [...(groups.get(licence) ?? []), family]);
  }, new Map());
  for (const [licence, names] of byLicence) console.log(`\n**Fonts, ${split}, ${licence}** (${names.length} families, packages @fontsource/…): ${names.sort().join(", ")}.`);
}
