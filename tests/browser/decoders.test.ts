import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { overflowOf, violationsOf } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";

const address = inject("appAddress");
const { decoders, fields } = messages;
const NARROW = { width: 320, height: 700 };
let browser: OpenedBrowser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const open = (page: Page, name: string) => page.goto(`${address}/dates/decoders/${name}`);
const heading = (page: Page, name: string) => page.getByRole("heading", { name, exact: true });

describe("the registration diamond", () => {
  it.each([true, false])("is filled in and read by keyboard alone, with scripts %s", async (scripts) => {
    const page = await browser.newPage({ javaScriptEnabled: scripts, viewport: NARROW });
    await open(page, "registration-diamond");
    await page.getByLabel(fields.class, { exact: true }).focus();
    for (const [i, typed] of ["iii", "e", "31", "2", "e"].entries()) {
      if (i > 0) await page.keyboard.press("Tab");
      await page.keyboard.type(typed);
    }
    await page.keyboard.press("Enter");
    await page.waitForURL(/top=e/);
    await heading(page, "Not before 31 May 1855").waitFor();
    await page.getByText("Class III: Glass.").waitFor();
    expect(await page.getByLabel(fields.right, { exact: true }).inputValue()).toBe("31");
    expect(await overflowOf(page)).toBeLessThanOrEqual(0);
    if (scripts) expect(await violationsOf(page)).toEqual([]);
    await page.context().close();
  });

  it("keeps its fields inside the drawing and apart, at 320 pixels", async () => {
    const page = await browser.newPage({ viewport: NARROW });
    await open(page, "registration-diamond");
    const names = [fields.class, fields.top, fields.right, fields.bottom, fields.left];
    const boxes = [];
    for (const name of names) boxes.push(await page.getByLabel(name, { exact: true }).boundingBox());
    for (const [i, box] of boxes.entries()) {
      if (!box) throw new Error(`${names[i]} is not shown.`);
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(NARROW.width);
      expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
      for (const other of boxes.slice(i + 1)) {
        if (!other) continue;
        const apart =
          box.x + box.width <= other.x ||
          other.x + other.width <= box.x ||
          box.y + box.height <= other.y ||
          other.y + other.height <= box.y;
        expect(apart).toBe(true);
      }
    }
    await page.context().close();
  });

  it("says at its corner what is wrong, and keeps what was typed", async () => {
    const page = await browser.newPage({ javaScriptEnabled: false });
    await open(page, "registration-diamond?top=E&right=31&left=G");
    const wrong = page.getByLabel(fields.right, { exact: true });
    expect(await wrong.getAttribute("aria-invalid")).toBe("true");
    expect(await wrong.inputValue()).toBe("31");
    expect(await isIn(page, fields.right)).toBe(true);
    await page.getByText("a day from 1 to 28 is needed in that month. Received “31”.").waitFor();
    await page.context().close();
  });
});

describe("hallmarks", () => {
  it.each([true, false])("are read by office, letter and style, with scripts %s", async (scripts) => {
    const page = await browser.newPage({ javaScriptEnabled: scripts, viewport: NARROW });
    await open(page, "hallmarks");
    await page.getByLabel(fields.office).selectOption("Birmingham");
    await page.getByLabel(fields.letter, { exact: true }).fill("k");
    await page.getByRole("button", { name: decoders.read }).click();
    await page.waitForURL(/letter=k/);
    expect(await page.locator("#answer ol > li").count()).toBe(10);

    await page.getByRole("radio", { name: "black letter small" }).check();
    await page.getByRole("button", { name: decoders.read }).click();
    await page.waitForURL(/style=black/);
    await heading(page, "1 July 1884 to 30 June 1885").waitFor();
    expect(await page.locator("#answer ol > li").count()).toBe(1);
    expect(await overflowOf(page)).toBeLessThanOrEqual(0);
    await page.context().close();
  });
});

it("puts what it read on a worksheet, beside what stands there", async () => {
  const page = await browser.newPage();
  await page.goto(`${address}/dates/decoders?v=1&t=Tin+hare`);
  await page.getByRole("link", { name: decoders.names["us-patents"] }).click();
  await page.getByLabel(fields.number).fill("Pat. No. 2,046,837");
  await page.keyboard.press("Enter");
  await page.waitForURL(/number=/);
  await page.getByRole("link", { name: decoders.add }).click();
  await page.waitForURL(/\/dates\?/);
  await page.getByText("United States patent 2,046,837 was issued in 1936").first().waitFor();
  expect(new URL(page.url()).searchParams.get("t")).toBe("Tin hare");
  await page.context().close();
});

it("keeps the tables on the server", async () => {
  const page = await browser.newPage();
  const scripts = new Set<string>();
  for (const path of ["/", "/dates", "/dates/decoders", "/dates/decoders/wording?wording=Nippon"]) {
    await page.goto(`${address}${path}`, { waitUntil: "networkidle" });
    const loaded = await page.evaluate(() =>
      performance.getEntriesByType("resource").map(({ name }) => name),
    );
    for (const name of loaded) if (/\.js(\?|$)/.test(name)) scripts.add(name);
  }
  const texts = await Promise.all([...scripts].map(async (script) => (await fetch(script)).text()));
  expect(texts.length).toBeGreaterThan(3);
  expect(texts.filter((text) => /SCAPIN|2026516|black letter small/.test(text))).toEqual([]);
  await page.context().close();
});

/** Does the field of that label have the focus? */
const isIn = (page: Page, label: string) =>
  page.getByLabel(label, { exact: true }).evaluate((field) => field === document.activeElement);
