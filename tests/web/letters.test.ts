import { readdir, readFile } from "node:fs/promises";
import { expect, inject, it } from "vitest";
import type { LettersProposal } from "#core/reading/propose-letters";

const address = inject("appAddress");
const data = inject("appData");

const kept = async () => (await readdir(`${data}/images`, { recursive: true })).sort();
const ask = (form: FormData, headers: Record<string, string> = {}) =>
  fetch(`${address}/api/letters`, { method: "POST", body: form, headers });

/** A reference of the demo whose wording is GORSE'S / PATENT / FILTER. */
async function photographed(): Promise<FormData> {
  const form = new FormData();
  const bytes = await readFile("seed/demo/photographs/gorse-patent-filter-2.webp");
  form.set("photograph", new File([new Uint8Array(bytes)], "mark.webp", { type: "image/webp" }));
  return form;
}

it("proposes letters and keeps nothing", async () => {
  const before = await kept();
  const answer = await ask(await photographed());
  expect(answer.status).toBe(200);
  expect(answer.headers.get("cache-control")).toBe("no-store");
  expect(answer.headers.get("set-cookie")).toBeNull();
  const { proposals } = (await answer.json()) as { proposals: readonly LettersProposal[] };
  expect(proposals[0]?.letters).toContain("PATENT");
  expect(await kept()).toEqual(before);
});

it("refuses what another site sends, what is no photograph, and a region outside it", async () => {
  expect((await ask(await photographed(), { "sec-fetch-site": "cross-site" })).status).toBe(403);
  const text = new FormData();
  text.set("photograph", new File(["only words"], "mark.jpg", { type: "image/jpeg" }));
  const refused = await ask(text);
  expect(refused.status).toBe(422);
  expect(await refused.json()).toMatchObject({ error: { field: "photograph", rule: "image-type" } });
  const outside = await photographed();
  for (const [name, value] of Object.entries({ x: 9000, y: 0, width: 50, height: 50 }))
    outside.set(name, `${value}`);
  expect((await ask(outside)).status).toBe(422);
});
