import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { photographsToTry } from "../setup/photographs-to-try.ts";

const address = inject("appAddress");
const known = photographsToTry().filter(({ entry }) => entry !== null);
const absent = photographsToTry().filter(({ entry }) => entry === null);
/** Five, every fourth of the list, which goes through the trades; none of them has a near twin among the entries. */
const five = known.filter((_, i) => i % 4 === 3);

describe("looking a mark up in a browser", () => {
  let browser: OpenedBrowser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it("has five photographs of known marks to try, and one of a mark that no entry has", () => {
    expect(five).toHaveLength(5);
    expect(absent.length).toBeGreaterThan(0);
  });

  it.each(five)("finds the entry of “$title” first", async ({ path, entry }) => {
    const page = await browser.newPage();
    await lookUp(page, path);
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe(messages.lookUp.nearest);
    const first = page.locator("section[aria-labelledby=matches] ol > li").first();
    const links = await first
      .getByRole("link")
      .evaluateAll((all) => all.map((link) => link.getAttribute("href")));
    expect(links).toContain(`/entries/${entry}`);
    await page.context().close();
  });

  it("says of a mark that no entry has that none fits, and shows the nearest for comparison only", async () => {
    const page = await browser.newPage();
    await lookUp(page, absent[0]?.path ?? "", messages.bench.whole);
    await page.getByRole("heading", { level: 1, name: messages.lookUp.noneInWhole }).waitFor();
    await page.getByRole("heading", { name: messages.lookUp.forComparison }).waitFor();

    // The whole photograph was asked about: the first thing to do is to crop, and only then is it an answer.
    await page.getByRole("link", { name: messages.none.cropToMark }).click();
    const width = page.getByRole("textbox", { name: messages.bench.box.width });
    await width.fill(String(Math.round(Number(await width.inputValue()) * 0.97)));
    await page.keyboard.press("Tab");
    await page.getByRole("button", { name: messages.bench.lookUp, exact: true }).click();
    await page.getByRole("heading", { level: 1, name: messages.lookUp.noneFits }).waitFor();
    await page.context().close();
  });
});

/** Chooses a photograph, leaves the frame as it is or presses a button, sends it and waits for the answer's page. */
async function lookUp(page: Page, path: string, press?: string): Promise<void> {
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(path);
  if (press) await page.getByRole("button", { name: press, exact: true }).click();
  await page.getByRole("button", { name: messages.bench.lookUp, exact: true }).click();
  await page.waitForURL(/\/look-ups\/[\w-]+$/, { timeout: 20_000 });
  await page.getByRole("heading", { level: 1 }).waitFor();
}
