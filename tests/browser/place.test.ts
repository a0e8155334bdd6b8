import type { Page } from "playwright-core";
import sharp from "sharp";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { violationsOf } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { photographsToTry } from "../setup/photographs-to-try.ts";

const address = inject("appAddress");
/** A photograph in which the mark is found with confidence: the network itself is measured elsewhere. */
const known = photographsToTry().filter(({ entry }) => entry !== null)[3];
const { bench } = messages;
const { place } = bench;
let browser: OpenedBrowser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

it("frames the mark it finds, says so, and lets the keyboard correct it", async () => {
  const page = await browser.newPage();
  await choose(page);
  await page.getByRole("status").filter({ hasText: place.here }).waitFor();
  const photograph = await sizeOf(page);
  const framed = await frameOf(page);
  expect(framed.width * framed.height).toBeLessThan(photograph.width * photograph.height);
  expect(await violationsOf(page)).toEqual([]);

  await page.getByRole("button", { name: bench.handle.se }).focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press("Shift+ArrowLeft");
  const corrected = await frameOf(page);
  expect(corrected.width).toBeLessThan(framed.width);
  expect(corrected.x).toBe(framed.x);
  // Once the person has framed the mark, nothing is claimed of it.
  expect(await page.getByText(place.here).count()).toBe(0);

  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  await page.waitForURL(/\/look-ups\/[\w-]+$/);
  expect(await page.getByText(messages.lookUp.framedByProposal).count()).toBe(0);
  await page.context().close();
});

it("has the whole photograph and the next place one press away", async () => {
  const page = await browser.newPage();
  const region = (x: number) => ({ x, y: 20, width: 40, height: 40, turn: 0 });
  await answerWith(page, {
    confident: true,
    proposals: [
      { region: region(10), confidence: 0.9 },
      { region: region(60), confidence: 0.3 },
    ],
  });
  await choose(page);
  await page.getByRole("status").filter({ hasText: place.here }).waitFor();
  const first = await frameOf(page);
  await page.getByRole("button", { name: place.next }).click();
  await page.getByRole("status").filter({ hasText: "2" }).waitFor();
  expect((await frameOf(page)).x).toBeGreaterThan(first.x);
  await page.getByRole("button", { name: place.next }).click();
  expect(await frameOf(page)).toEqual(first);

  await page.getByRole("button", { name: bench.whole, exact: true }).click();
  const whole = await frameOf(page);
  expect([whole.width, whole.height]).toEqual(Object.values(await sizeOf(page)));
  await page.context().close();
});

it("leaves the whole photograph, and says so, when it is not clear where the mark is", async () => {
  const page = await browser.newPage();
  await answerWith(page, {
    confident: false,
    proposals: [{ region: { x: 30, y: 30, width: 30, height: 30, turn: 0 }, confidence: 0.2 }],
  });
  await choose(page);
  await page.getByRole("status").filter({ hasText: place.unclear }).waitFor();
  const whole = await frameOf(page);
  expect([whole.width, whole.height]).toEqual(Object.values(await sizeOf(page)));
  expect(await violationsOf(page)).toEqual([]);

  await page.getByRole("button", { name: place.show }).click();
  expect((await frameOf(page)).width).toBeLessThan(whole.width);
  await page.context().close();
});

it("never takes the frame out of the person's hands", async () => {
  const page = await browser.newPage();
  let answer = () => undefined as unknown;
  const asked = new Promise<void>((reached) =>
    page.route("**/api/regions", (route) => {
      answer = () => route.continue();
      reached();
    }),
  );
  await choose(page);
  await asked;
  await page.getByRole("textbox", { name: bench.box.width }).fill("77");
  await page.keyboard.press("Tab");
  const arrived = page.waitForResponse("**/api/regions");
  answer();
  await (await arrived).finished();
  await page.locator("[data-place=told]").waitFor();
  expect((await frameOf(page)).width).toBe(77);
  await page.context().close();
});

it("looks for the mark when a plain form sends no frame, and shows which part was looked up", async () => {
  const page = await browser.newPage({ javaScriptEnabled: false });
  await page.goto(address);
  await page.locator("#photograph").setInputFiles({
    name: "far.jpg",
    mimeType: "image/jpeg",
    buffer: await fromAfar(known?.path ?? ""),
  });
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  expect(page.url()).toMatch(/\/look-ups\/[\w-]+$/);
  await page.getByText(messages.lookUp.framedByProposal).waitFor();
  await page.getByText(messages.lookUp.wholePhotograph, { exact: true }).click();
  const photograph = await page.getByRole("img", { name: messages.lookUp.wholeAlt }).boundingBox();
  const frame = await page.locator("[data-frame]").boundingBox();
  if (!photograph || !frame) throw new Error("The whole photograph and its frame are not shown.");
  expect(frame.width * frame.height).toBeLessThan(photograph.width * photograph.height);
  expect(frame.x).toBeGreaterThanOrEqual(photograph.x - 1);
  expect(frame.x + frame.width).toBeLessThanOrEqual(photograph.x + photograph.width + 1);
  await page.getByRole("link", { name: messages.lookUp.cropAgain }).first().waitFor();
  await page.context().close();
});

/** The photograph as a small part of a larger one, near its corner: as a whole it resembles nothing. */
async function fromAfar(path: string): Promise<Buffer> {
  const { dominant } = await sharp(path).stats();
  const near = await sharp(path).resize({ width: 300 }).toBuffer();
  return sharp({ create: { width: 900, height: 700, channels: 3, background: dominant } })
    .composite([{ input: near, left: 60, top: 60 }])
    .jpeg({ quality: 92 })
    .toBuffer();
}

async function choose(page: Page): Promise<void> {
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(known?.path ?? "");
  await page.getByRole("button", { name: bench.handle.se }).waitFor();
}

/** Answers for the reference, in a photograph of 100 x 100 of which the one on the bench is an enlargement. */
async function answerWith(page: Page, places: object): Promise<void> {
  await page.route("**/api/regions", (route) =>
    route.fulfill({ json: { width: 100, height: 100, ...places } }),
  );
}

async function frameOf(page: Page) {
  const read = async (label: string) => Number(await page.getByRole("textbox", { name: label }).inputValue());
  return {
    x: await read(bench.box.x),
    y: await read(bench.box.y),
    width: await read(bench.box.width),
    height: await read(bench.box.height),
  };
}

/** The photograph's own size: the browser has read it. */
const sizeOf = (page: Page) =>
  page.getByRole("img", { name: bench.yourPhotograph }).evaluate((image: HTMLImageElement) => ({
    width: image.naturalWidth,
    height: image.naturalHeight,
  }));
