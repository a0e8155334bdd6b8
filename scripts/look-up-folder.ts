import { readFile } from "node:fs/promises";
import { parseArgs } from "node:util";
import { imagesOfClasses, keyOfClass } from "./folders/class-folders.ts";

/**
 * Sends every image of a folder `<class>/<image>` to the look-up address of a running host, as a person's browser
 * would, and prints how often the entry named after the class came first, and among the first five.
 *
 *   npx tsx scripts/look-up-folder.ts --host http://127.0.0.1:3000 --queries DIR [--misses] [--json]
 */
const { values } = parseArgs({
  options: {
    host: { type: "string" },
    queries: { type: "string" },
    misses: { type: "boolean", default: false },
    json: { type: "boolean", default: false },
  },
});
const { host, queries, misses, json } = values;
if (!host || !queries) throw new Error("--host and --queries must both be given.");

const places: number[] = [];
const times: number[] = [];
let noneFits = 0;
for (const { class: name, file, path } of await imagesOfClasses(queries)) {
  const began = performance.now();
  const answer = await lookUp(await readFile(path), file);
  times.push(performance.now() - began);
  const place = answer.matches.findIndex((match) => match.entry.slug === keyOfClass(name)) + 1;
  places.push(place);
  if (answer.noneFits) noneFits++;
  if (misses && place !== 1) {
    const first = answer.matches[0];
    console.error(
      `${name}/${file}: ${place || "not listed"}, first is ${first?.entry.slug} (${first?.similarity.toFixed(3)})`,
    );
  }
}
const shareWithin = (limit: number) =>
  places.filter((place) => place >= 1 && place <= limit).length / places.length;
const result = {
  queries: places.length,
  recall1: shareWithin(1),
  recall5: shareWithin(5),
  noneFits,
  medianMs: times.sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN,
};
if (json) console.log(JSON.stringify(result));
else
  console.log(
    `${result.queries} queries   recall@1 ${result.recall1.toFixed(3)}   recall@5 ${result.recall5.toFixed(3)}   ` +
      `"none fits" for ${result.noneFits}   median ${result.medianMs.toFixed(0)} ms, as seen from outside`,
  );

type Answer = {
  readonly noneFits: boolean;
  readonly matches: readonly { readonly entry: { readonly slug: string }; readonly similarity: number }[];
};

async function lookUp(bytes: Uint8Array<ArrayBuffer>, name: string): Promise<Answer> {
  const form = new FormData();
  form.set("photograph", new File([bytes], name));
  const response = await fetch(new URL("/api/look-ups", host), {
    method: "POST",
    body: form,
    headers: { accept: "application/json" },
  });
  if (!response.ok)
    throw new Error(`${name}: the host answered ${response.status}: ${await response.text()}`);
  return (await response.json()) as Answer;
}
