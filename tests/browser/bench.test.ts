import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { violationsOf } from "../setup/accessibility.ts";
import { nameToTry } from "../setup/ask-for-look-up.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { photographsToTry } from "../setup/photographs-to-try.ts";

const address = inject("appAddress");
/** The first of the list shows one of two marks that differ in one letter; this one has no twin. */
const known = photographsToTry().filter(({ entry }) => entry !== null)[3];
const { bench } = messages;
let browser: OpenedBrowser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

it("looks up a photograph to try by the keyboard alone", async () => {
  const page = await newPage();
  await page.goto(address);
  await tabTo(page, `button[name=try][value="${nameToTry(known?.path ?? "")}"]`);
  await page.keyboard.press("Enter");
  await page.waitForURL(/\/look-ups\/[\w-]+$/);
  expect(await firstEntry(page)).toBe(`/entries/${known?.entry}`);
  await page.context().close();
});

it("looks up without scripts, by the plain form and by a photograph to try", async () => {
  const page = await newPage({ javaScriptEnabled: false });
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(known?.path ?? "");
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  expect(page.url()).toMatch(/\/look-ups\/[\w-]+$/);
  expect(await firstEntry(page)).toBe(`/entries/${known?.entry}`);

  await page.goto(address);
  await page.locator(`button[name=try][value="${nameToTry(known?.path ?? "")}"]`).click();
  expect(await firstEntry(page)).toBe(`/entries/${known?.entry}`);
  await page.context().close();
});

it("tells a plain form what was wrong with the file", async () => {
  const page = await newPage({ javaScriptEnabled: false });
  await page.goto(address);
  const file = { name: "notes.jpg", mimeType: "image/jpeg", buffer: Buffer.from("not a photograph") };
  await page.locator("#photograph").setInputFiles(file);
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  expect(new URL(page.url()).pathname).toBe("/look-up-refused");
  expect(await page.getByRole("alert").first().textContent()).toContain("text");
  await page.context().close();
});

it("crops by keys and numbers, and searches what was framed", async () => {
  const page = await newPage();
  await page.addInitScript(keepWhatIsSent);
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(known?.path ?? "");
  const width = page.getByRole("textbox", { name: bench.box.width });
  const whole = Number(await width.inputValue());
  expect(whole).toBeGreaterThan(100);

  await page.getByRole("button", { name: bench.handle.se }).focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press("Shift+ArrowLeft");
  expect(Number(await width.inputValue())).toBeLessThan(whole);

  await type(page, bench.box.width, 120);
  await type(page, bench.box.height, 100);
  await type(page, bench.box.x, 30);
  await type(page, bench.box.y, 40);
  await page.getByRole("slider").focus();
  await page.keyboard.press("ArrowRight");
  expect(await violationsOf(page)).toEqual([]);

  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  await page.waitForURL(/\/look-ups\/[\w-]+$/);
  expect(await page.evaluate("window.sent")).toMatchObject({ width: "120", height: "100", turn: "1" });
  await page.context().close();
});

it("finds the same entry when the photograph is turned by a quarter first", async () => {
  const page = await newPage();
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(known?.path ?? "");
  await page.getByRole("button", { name: bench.quarterRight }).click();
  expect(await page.getByRole("slider", { name: bench.turn }).inputValue()).toBe("90");
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  await page.waitForURL(/\/look-ups\/[\w-]+$/);
  expect(await firstEntry(page)).toBe(`/entries/${known?.entry}`);
  await page.context().close();
});

it("keeps the whole photograph whole, in its numbers and within its mat, when it is turned by a quarter", async () => {
  const page = await newPage();
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(known?.path ?? "");
  const upright = await Promise.all([bench.box.width, bench.box.height].map((name) => read(page, name)));
  await page.getByRole("button", { name: bench.quarterRight }).click();
  const turned = await Promise.all([bench.box.width, bench.box.height].map((name) => read(page, name)));
  expect(turned).toEqual(upright.reverse());
  const frame = await page.getByRole("group", { name: bench.cropArea }).boundingBox();
  const sheet = await page.locator(".ReactCrop__child-wrapper").boundingBox();
  for (const key of ["x", "y", "width", "height"] as const)
    expect(Math.abs((frame?.[key] ?? 0) - (sheet?.[key] ?? 1e6))).toBeLessThan(2);
  await page.context().close();
});

it("draws a frame by a drag inside the whole photograph, and moves it by another", async () => {
  const page = await newPage();
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(known?.path ?? "");
  const whole = await read(page, bench.box.width);
  const sheet = await page.locator(".ReactCrop__child-wrapper").boundingBox();
  if (!sheet) throw new Error("The photograph is not shown.");
  const at = (x: number, y: number) => [sheet.x + x * sheet.width, sheet.y + y * sheet.height] as const;
  await page.mouse.move(...at(0.25, 0.25));
  await page.mouse.down();
  await page.mouse.move(...at(0.5, 0.5), { steps: 5 });
  await page.mouse.move(...at(0.75, 0.75), { steps: 5 });
  await page.mouse.up();
  const drawn = await read(page, bench.box.width);
  expect(Math.abs(drawn - whole / 2)).toBeLessThan(whole / 50);
  const left = await read(page, bench.box.x);

  await page.mouse.move(...at(0.5, 0.5));
  await page.mouse.down();
  await page.mouse.move(...at(0.6, 0.5), { steps: 5 });
  await page.mouse.up();
  expect(await read(page, bench.box.width)).toBe(drawn);
  expect(await read(page, bench.box.x)).toBeGreaterThan(left);
  await page.context().close();
});

it("leads the keyboard past the frame's nine stops", async () => {
  const page = await newPage();
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(known?.path ?? "");
  await page.getByRole("button", { name: bench.handle.se }).waitFor();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe(bench.lookUp);
  await page.context().close();
});

it("refuses a text that is called a photograph before it is sent, and names the file", async () => {
  const page = await newPage();
  await page.goto(address);
  const file = { name: "notes.jpg", mimeType: "image/jpeg", buffer: Buffer.from("not a photograph") };
  await page.locator("#photograph").setInputFiles(file);
  await page.getByRole("alert").filter({ hasText: "notes.jpg" }).waitFor();
  expect(await page.getByRole("button", { name: bench.lookUp, exact: true }).isVisible()).toBe(false);
  await page.context().close();
});

it("crops again without scripts, by numbers in a plain form", async () => {
  const page = await newPage({ javaScriptEnabled: false });
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(known?.path ?? "");
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  const first = page.url();
  await page.goto(`${first}/again`);
  await page.getByRole("spinbutton", { name: bench.box.width }).fill("150");
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  expect(page.url()).toMatch(/\/look-ups\/[\w-]+$/);
  expect(page.url()).not.toBe(first);
  await page.goto(`${page.url()}/again`);
  expect(await page.getByRole("spinbutton", { name: bench.box.width }).inputValue()).toBe("150");
  await page.context().close();
});

it("keeps the photograph and its frame when the look-up is refused or cancelled", async () => {
  const page = await newPage();
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(known?.path ?? "");
  await type(page, bench.box.width, 90);
  await page.route("**/api/look-ups", async (route) => {
    const error = { field: "request", rule: "busy", received: "30" };
    await route.fulfill({ contentType: "application/x-ndjson", body: `${JSON.stringify({ error })}\n` });
  });
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  // The router keeps an alert of its own, which is empty.
  await page.getByRole("alert").filter({ hasText: "30" }).waitFor();
  expect(await page.getByRole("textbox", { name: bench.box.width }).inputValue()).toBe("90");

  await page.unroute("**/api/look-ups");
  await page.route("**/api/look-ups", () => undefined);
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  await page.getByText(bench.doing.embedded).waitFor();
  await page.getByRole("button", { name: bench.cancel }).click();
  expect(await page.getByRole("textbox", { name: bench.box.width }).inputValue()).toBe("90");
  await page.context().close();
});

it("lets the owner of a look-up crop it again, keep it and delete it", async () => {
  const page = await newPage();
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(known?.path ?? "");
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  await page.waitForURL(/\/look-ups\/[\w-]+$/);
  const first = page.url();

  await page.getByRole("link", { name: messages.lookUp.cropAgain }).first().click();
  await page.waitForURL(/\/again$/);
  await type(page, bench.box.width, 150);
  expect(await violationsOf(page)).toEqual([]);
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  await page.waitForURL((url) => /\/look-ups\/[\w-]+$/.test(url.pathname) && url.href !== first);

  await page.getByRole("button", { name: messages.keeping.keep }).click();
  await page.getByText(messages.keeping.kept).waitFor();
  await page.getByText(messages.keeping.said.kept).waitFor();
  const kept = page.url();
  await page.getByText(messages.keeping.delete, { exact: true }).click();
  await page.getByRole("button", { name: messages.keeping.deleteYes }).click();
  await page.waitForURL(`${address}/?said=deleted`);
  await page.getByText(messages.home.deleted).waitFor();
  expect((await fetch(kept)).status).toBe(404);
  expect((await fetch(first)).status).toBe(200);
  await page.context().close();
});

/** A page in which no place is proposed, so that the frame is the whole photograph until it is drawn. */
async function newPage(options: Parameters<OpenedBrowser["newPage"]>[0] = {}): Promise<Page> {
  const page = await browser.newPage(options);
  const nowhere = { width: 1, height: 1, proposals: [], confident: false };
  await page.route("**/api/regions", (route) => route.fulfill({ json: nowhere }));
  return page;
}

/** Runs in the page: the browser tells a test nothing of a form with a file in it, so its parts are kept. */
function keepWhatIsSent(): void {
  const send = XMLHttpRequest.prototype.send;
  XMLHttpRequest.prototype.send = function (body) {
    if (body instanceof FormData) Object.assign(window, { sent: Object.fromEntries(body) });
    send.call(this, body);
  };
}

async function type(page: Page, label: string, value: number): Promise<void> {
  await page.getByRole("textbox", { name: label }).fill(String(value));
  await page.keyboard.press("Tab");
}

const read = async (page: Page, label: string): Promise<number> =>
  Number(await page.getByRole("textbox", { name: label }).inputValue());

/** Presses Tab until the wanted element has the focus, as someone without a pointer does. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let i = 0; i < 120; i++) {
    await page.keyboard.press("Tab");
    if (await page.evaluate((each) => document.activeElement?.matches(each) ?? false, selector)) return;
  }
  throw new Error(`${selector} was not reached by 120 presses of Tab.`);
}

async function firstEntry(page: Page): Promise<string | null> {
  const first = page.locator("section[aria-labelledby=matches] ol > li h3 a").first();
  return first.getAttribute("href");
}
