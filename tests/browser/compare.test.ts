import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { askForLookUp } from "../setup/ask-for-look-up.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";

const address = inject("appAddress");
const { compare } = messages;
let browser: OpenedBrowser;
let path: string;
let turn: number;

beforeAll(async () => {
  browser = await openBrowser();
  const { id, matches } = await askForLookUp(address);
  path = `/look-ups/${id}/compare/${matches[0]?.entry.slug}`;
  turn = matches[0]?.turn ?? Number.NaN;
});
afterAll(() => browser.close());

it.each([1280, 390])(
  "moves both photographs together, by buttons and by keys, %d pixels wide",
  async (width) => {
    const page = await opened({ viewport: { width, height: 800 } });
    const panes = [pane(page, compare.paneQuery), pane(page, compare.paneReference)];
    await page.getByRole("button", { name: compare.nearer, exact: true }).click();
    const nearer = await Promise.all(panes.map(transformOf));
    expect(nearer[0]).toBe(nearer[1]);
    expect(nearer[0]).toContain("scale(1.5)");

    await panes[0]?.focus();
    await page.keyboard.press("ArrowRight");
    const moved = await Promise.all(panes.map(transformOf));
    expect(moved[0]).not.toBe(nearer[0]);
    expect(moved[0]).toBe(moved[1]);

    await page.getByRole("button", { name: compare.whole, exact: true }).click();
    for (const each of panes) expect(await transformOf(each)).toContain("scale(1)");
    await page.context().close();
  },
);

it("turns one's own photograph from where the likeness was found", async () => {
  const page = await opened();
  const slider = page.getByRole("slider", { name: compare.turn });
  const before = Number(await slider.inputValue());
  expect((before + 360) % 360).toBe(Math.round(turn) % 360);
  await slider.focus();
  await page.keyboard.press("ArrowLeft");
  expect(Number(await slider.inputValue())).toBe(before - 1);
  await page.context().close();
});

it("reads a comma in millimetres as a decimal sign, and says when a size is not plausible", async () => {
  const page = await opened();
  const field = page.getByRole("textbox", { name: compare.measured });
  const note = page.locator("[role=status]", { hasText: /typed/ });
  await field.pressSequentially("12,5");
  await page.keyboard.press("Tab");
  expect(await field.inputValue()).toBe("12.5");
  expect(await note.count()).toBe(0);
  await field.fill("0.001");
  await page.keyboard.press("Tab");
  await note.waitFor();
  expect(await note.textContent()).toContain("0.001");
  expect(Number(await field.inputValue())).toBeGreaterThan(0.5);
  await page.context().close();
});

it("keeps each photograph inside its pane, without scripts too, and one's own comes first", async () => {
  const page = await browser.newPage({ javaScriptEnabled: false });
  await page.goto(address + path);
  const figures = page.locator("figure");
  expect(await figures.first().getByRole("img").getAttribute("alt")).toBe(compare.altQuery);
  for (const figure of await figures.all()) {
    const pane = figure.locator("> div").first();
    expect(await pane.evaluate((each) => getComputedStyle(each).overflow)).toBe("hidden");
    const box = await pane.boundingBox();
    expect(Math.abs((box?.width ?? 0) - (box?.height ?? 1e6))).toBeLessThan(2);
  }
  await page.context().close();
});

it("wipes one over the other", async () => {
  const page = await opened();
  await page.getByRole("radio", { name: compare.mode.wipe }).check();
  const slider = page.getByRole("slider", { name: compare.wipe });
  expect(await slider.inputValue()).toBe("50");
  await slider.focus();
  await page.keyboard.press("End");
  expect(await over(page).evaluate((each) => getComputedStyle(each).clipPath)).toContain(" 0%");
  await page.keyboard.press("Home");
  expect(await over(page).evaluate((each) => getComputedStyle(each).clipPath)).toContain("100%");
  await page.context().close();
});

it("blinks until it is stopped, and only by hand where motion is not welcome", async () => {
  const page = await opened();
  await page.getByRole("radio", { name: compare.mode.blink }).check();
  await page.getByRole("button", { name: compare.stop }).click();
  const opacity = () => over(page).evaluate((each) => getComputedStyle(each).opacity);
  const stopped = await opacity();
  await page.waitForTimeout(1200);
  expect(await opacity()).toBe(stopped);

  const calm = await opened({ reducedMotion: "reduce" });
  await calm.getByRole("radio", { name: compare.mode.blink }).check();
  await calm.getByRole("button", { name: compare.start }).waitFor();
  await calm.getByRole("button", { name: compare.swap }).click();
  const calmOpacity = () => over(calm).evaluate((each) => getComputedStyle(each).opacity);
  await expect.poll(calmOpacity).toBe("0");
  await page.context().close();
  await calm.context().close();
});

async function opened(options: Parameters<OpenedBrowser["newPage"]>[0] = {}): Promise<Page> {
  const page = await browser.newPage(options);
  await page.goto(address + path, { waitUntil: "load" });
  await page.getByRole("radio", { name: compare.mode.side }).waitFor();
  return page;
}

const pane = (page: Page, name: string): Locator => page.getByRole("group", { name, exact: true });
/** The figure that lies over the other one. */
const over = (page: Page): Locator => page.locator("figure", { has: page.getByAltText(compare.altQuery) });
const transformOf = (each: Locator): Promise<string> =>
  each.locator("> div").evaluate((content) => (content as HTMLElement).style.transform);
