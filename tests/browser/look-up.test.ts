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
    const { unclaimed: _, ...claims } = messages.lookUp.claim;
    expect(Object.values(claims)).toContain(await page.getByRole("heading", { level: 1 }).textContent());
    const first = page.locator("section[aria-labelledby=matches] ol > li").first();
    const links = await first
      .getByRole("link")
      .evaluateAll((all) => all.map((link) => link.getAttribute("href")));
    expect(links).toContain(`/entries/${entry}`);
    await page.context().close();
  });

  it("says of a mark that no entry has that none fits, and shows the nearest for comparison only", async () => {
    const page = await browser.newPage();
    // The one that is farthest from being any entry's, so that another processor's last digits change nothing.
    await lookUp(page, absent.at(-1)?.path ?? "", messages.bench.whole);
    await page.getByRole("heading", { level: 1, name: messages.lookUp.noneInWhole }).waitFor();
    await page.getByRole("heading", { name: messages.lookUp.forComparison }).waitFor();
    // "None" stands before the nearest, with its probability in words.
    const order = await page
      .locator("h1, #none, #matches")
      .evaluateAll((all) => all.map((each) => each.id || each.localName));
    expect(order).toEqual(["h1", "none", "matches"]);
    await page.getByText(/^\d+ % that no entry shows this mark, /).waitFor();

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

describe("how sure is sure", () => {
  let browser: OpenedBrowser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  it("is one step from an answer, says when and on what it was measured, and gives the diagram in numbers", async () => {
    const page = await browser.newPage();
    await lookUp(page, five[0]?.path ?? "");
    const first = page.locator("section[aria-labelledby=matches] ol > li").first();
    expect(await first.textContent()).toMatch(/\d+ %/);
    await page.getByRole("link", { name: messages.howSure.title }).click();
    await page.getByRole("heading", { level: 1, name: messages.howSure.title }).waitFor();
    expect(new URL(page.url()).searchParams.get("model")).toMatch(/^marks@/);
    const rows = page.getByRole("table", { name: messages.howSure.tableCaption }).locator("tbody tr");
    expect(await rows.count()).toBe(15);
    expect(await page.locator("time").getAttribute("datetime")).toMatch(/^\d{4}-\d{2}-\d{2}$/);
    await page.getByText(messages.howSure.limits.real).waitFor();
    await page.context().close();
  });

  it("says of a model without a calibration that it has none", async () => {
    const page = await browser.newPage();
    await page.goto(`${address}/how-sure?model=marks@0.0.1`);
    await page.getByText("marks@0.0.1 has no calibration here").waitFor();
    expect(await page.getByRole("table").count()).toBe(0);
    await page.context().close();
  });
});

/** Chooses a photograph, leaves the frame as it is or presses a button, sends it and waits for the answer's page. */
async function lookUp(page: Page, path: string, press?: string): Promise<void> {
  await page.goto(address);
  // Whoever presses a button before the mark was looked for may see the frame move once more.
  const looked = page.waitForResponse((response) => response.url().endsWith("/api/regions"));
  await page.locator("#photograph").setInputFiles(path);
  await looked;
  if (press) await page.getByRole("button", { name: press, exact: true }).click();
  await page.getByRole("button", { name: messages.bench.lookUp, exact: true }).click();
  await page.waitForURL(/\/look-ups\/[\w-]+$/, { timeout: 20_000 });
  await page.getByRole("heading", { level: 1 }).waitFor();
}
