import { existsSync } from "node:fs";
import { readdir, readFile } from "node:fs/promises";
import { basename, join } from "node:path";
import sharp from "sharp";
import { expect, inject, it } from "vitest";
import type { Proposal } from "#core/photographs/proposal";
import { photographsToTry } from "../setup/photographs-to-try.ts";

const address = `${inject("appAddress")}/api/regions`;
const [first] = photographsToTry();
const path = first?.path ?? "";

type Answer = { width: number; height: number; proposals: Proposal[]; confident: boolean };

it("proposes up to three regions inside the photograph, best first, and keeps nothing", async () => {
  const before = await kept();
  const { width, height } = await sharp(path).metadata();
  const answer = await propose(await readFile(path));
  expect(answer).toMatchObject({ width, height });
  expect(answer.proposals.length).toBeGreaterThanOrEqual(1);
  expect(answer.proposals.length).toBeLessThanOrEqual(3);
  const confidences = answer.proposals.map(({ confidence }) => confidence);
  expect(confidences).toEqual(confidences.toSorted((a, b) => b - a));
  for (const { region, confidence } of answer.proposals) {
    expect(confidence).toBeGreaterThanOrEqual(0);
    expect(confidence).toBeLessThanOrEqual(1);
    expect(Math.min(region.x, region.y)).toBeGreaterThanOrEqual(0);
    expect(region.x + region.width).toBeLessThanOrEqual(width + 0.01);
    expect(region.y + region.height).toBeLessThanOrEqual(height + 0.01);
  }
  expect(await kept()).toEqual(before);
});

it("states them in pixels of the photograph as it came, however large", async () => {
  const { width } = await sharp(path).metadata();
  const small = await propose(await readFile(path));
  const large = await propose(
    await sharp(path)
      .resize({ width: width * 7 })
      .jpeg({ quality: 95 })
      .toBuffer(),
  );
  expect(large.width).toBe(width * 7);
  const [a, b] = [small.proposals[0]?.region, large.proposals[0]?.region];
  expect(Math.abs((b?.x ?? 0) / 7 - (a?.x ?? Number.NaN))).toBeLessThan(width * 0.05);
  expect(Math.abs((b?.width ?? 0) / 7 - (a?.width ?? Number.NaN))).toBeLessThan(width * 0.08);
});

it("is not confident of a photograph with nothing in it", async () => {
  const empty = await sharp({ create: { width: 300, height: 200, channels: 3, background: "#b9a27c" } })
    .jpeg()
    .toBuffer();
  expect((await propose(empty)).confident).toBe(false);
});

it("refuses a form without a photograph, and what another site's page sends", async () => {
  const without = await fetch(address, { method: "POST", body: new FormData() });
  expect(without.status).toBe(422);
  expect(await without.json()).toMatchObject({ error: { field: "photograph", rule: "image-missing" } });
  const foreign = await fetch(address, {
    method: "POST",
    body: formOf(await readFile(path)),
    headers: { origin: "http://elsewhere.example", "sec-fetch-site": "cross-site" },
  });
  expect(foreign.status).toBe(403);
});

async function propose(bytes: Buffer<ArrayBuffer>): Promise<Answer> {
  const response = await fetch(address, { method: "POST", body: formOf(bytes) });
  expect(response.status).toBe(200);
  return (await response.json()) as Answer;
}

function formOf(bytes: Buffer<ArrayBuffer>): FormData {
  const form = new FormData();
  form.set("photograph", new File([bytes], basename(path)));
  return form;
}

async function kept(): Promise<readonly string[]> {
  const folder = join(inject("appData"), "images");
  return existsSync(folder) ? (await readdir(folder, { recursive: true })).sort() : [];
}
