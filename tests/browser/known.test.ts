import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import type { FieldError } from "#core/field-error";
import type { LookUpView } from "#core/look-ups/look-up";
import messages from "../../messages/en.json" with { type: "json" };
import { violationsOf } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { photographsToTry } from "../setup/photographs-to-try.ts";

const address = inject("appAddress");
const { bench, known, fields, findings } = messages;
/** Two marks that differ by a letter: the photograph shows the first, and hardly tells them apart. */
const ANN_PIKE = "ann-pike-fish";
const JONAS_PIKE = "pike-stamped-fish";
const photograph = photographsToTry().find(({ entry }) => entry === ANN_PIKE)?.path ?? "";
const ANSWER = /\/look-ups\/[\w-]+$/;
let browser: OpenedBrowser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

it.each([1280, 390])(
  "takes what else is known from the bench to the answer, %d pixels wide",
  async (width) => {
    const page = await browser.newPage({ viewport: { width, height: 900 } });
    await page.goto(address);
    await page.getByText(known.heading).click();
    await page.getByLabel(fields.letters).fill("a. pike");
    await page.locator("#photograph").setInputFiles(photograph);
    await page.getByRole("heading", { name: bench.cropHeading }).waitFor();
    // What was typed before the photograph was chosen is still there.
    expect(await page.getByLabel(fields.letters).inputValue()).toBe("a. pike");
    await page.getByLabel(fields.material, { exact: true }).fill("pewter");
    await page.getByLabel(fields.width_mm).fill("30");
    await page.getByLabel(fields.technique).selectOption("impressed");
    expect(await violationsOf(page)).toEqual([]);
    await page.getByLabel(fields.letters).press("Enter");
    await page.waitForURL(ANSWER);

    expect(await firstEntry(page)).toBe(`/entries/${ANN_PIKE}`);
    const first = page.locator("section[aria-labelledby=matches] ol > li").first();
    const words = (await first.textContent()) ?? "";
    expect(words).toContain("A·PIKE");
    expect(words).toContain("Would fit but for the material: salt-glazed stoneware, not pewter.");
    expect(await page.getByText(known.asked).locator("..").textContent()).toContain("a. pike");
    expect(await violationsOf(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await page.context().close();
  },
);

it("asks again from the answer with something else known, and tells a wrong field at its place", async () => {
  const page = await browser.newPage();
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(photograph);
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  await page.waitForURL(ANSWER);
  const first = page.url();
  await page.getByText(known.heading).click();
  await page.getByLabel(fields.letters).fill("* ?");
  await page.getByRole("button", { name: known.askAgain }).click();
  await page.locator("[aria-invalid=true]").waitFor();
  expect(await described(page, fields.letters)).toContain("* ?");
  await page.getByLabel(fields.letters).fill("I·PIK?");
  await page.getByRole("button", { name: known.askAgain }).click();
  await page.waitForURL((url) => ANSWER.test(url.pathname) && url.href !== first);
  expect(await firstEntry(page)).toBe(`/entries/${JONAS_PIKE}`);
  const second = page.url();

  await page.getByText(known.heading).click();
  expect(await page.getByLabel(fields.letters).inputValue()).toBe("I·PIK?");
  await page.getByLabel(fields.letters).fill("A·PIK?");
  await page.getByRole("button", { name: known.askAgain }).click();
  await page.waitForURL((url) => ANSWER.test(url.pathname) && url.href !== second);
  expect(await firstEntry(page)).toBe(`/entries/${ANN_PIKE}`);
  // An answer does not change under its address.
  await page.goto(second);
  expect(await firstEntry(page)).toBe(`/entries/${JONAS_PIKE}`);
  await page.context().close();
});

it("does all of it without scripts", async () => {
  const page = await browser.newPage({ javaScriptEnabled: false });
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(photograph);
  await page.getByText(known.heading).click();
  await page.getByLabel(fields.height_mm).fill("tall");
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  expect(new URL(page.url()).pathname).toBe("/look-up-refused");
  expect(await page.getByLabel(fields.height_mm).inputValue()).toBe("tall");

  await page.locator("#photograph").setInputFiles(photograph);
  await page.getByLabel(fields.height_mm).fill("24");
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  expect(page.url()).toMatch(ANSWER);
  expect(await page.getByText(known.asked).locator("..").textContent()).toContain("24");
  const answer = new URL(page.url()).pathname;

  await page.getByText(known.heading).click();
  expect(await page.getByLabel(fields.height_mm).inputValue()).toBe("24");
  await page.getByLabel(fields.letters).fill("***");
  await page.getByRole("button", { name: known.askAgain }).click();
  expect(new URL(page.url()).pathname).toBe(answer);
  expect(await described(page, fields.letters)).toContain("***");
  await page.getByLabel(fields.letters).fill("A PIKE");
  await page.getByRole("button", { name: known.askAgain }).click();
  expect(page.url()).toMatch(ANSWER);
  expect(await firstEntry(page)).toBe(`/entries/${ANN_PIKE}`);
  await page.context().close();
});

it("keeps what was known when the photograph is cropped again", async () => {
  const page = await browser.newPage();
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(photograph);
  await page.getByText(known.heading).click();
  await page.getByLabel(fields.kind).selectOption("label");
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  await page.waitForURL(ANSWER);
  expect(await page.locator("section[aria-labelledby=matches]").textContent()).toContain(
    findings.butFor.replace("{what}", "the kind: mark, not label"),
  );
  await page.getByRole("link", { name: messages.lookUp.cropAgain }).first().click();
  await page.waitForURL(/\/again$/);
  expect(await page.getByLabel(fields.kind).inputValue()).toBe("label");
  expect(await violationsOf(page)).toEqual([]);
  await page.context().close();
});

it("answers programs in the same fields, and names field, rule and value of what is wrong", async () => {
  const ask = async (typed: Readonly<Record<string, string>>) => {
    const form = new FormData();
    form.set("try", "10");
    for (const [name, value] of Object.entries(typed)) form.set(name, value);
    const answer = await fetch(`${address}/api/look-ups`, {
      method: "POST",
      headers: { accept: "application/json" },
      body: form,
    });
    return { status: answer.status, body: (await answer.json()) as LookUpView & { error?: FieldError } };
  };
  const right = await ask({ letters: "A?PIKE", width_mm: "30", height_mm: "23,7", material: "stoneware" });
  expect(right.body.asked).toMatchObject({ letters: "A?PIKE", widthMm: 30, heightMm: 23.7 });
  const wrong = await ask({ width_mm: "wide" });
  expect([wrong.status, wrong.body.error]).toEqual([
    422,
    { field: "width_mm", rule: "millimetres", received: "wide", params: { from: 0.1, to: 5000 } },
  ]);
  const byLetters = await ask({ letters: "LARKHALL" });
  const found = byLetters.body.matches.find(({ entry }) => entry.slug === "larkhall-boat-plate");
  expect(found?.foundBy).toBe("letters");
  expect(found?.findings).toMatchObject([{ aspect: "letters", stands: "for", degree: "whole" }]);
});

async function firstEntry(page: Page): Promise<string | null> {
  const first = page.locator("section[aria-labelledby=matches] ol > li h3 a").first();
  return first.getAttribute("href");
}

/** What stands beside a field that is wrong. */
async function described(page: Page, label: string): Promise<string> {
  const ids = (await page.getByLabel(label).getAttribute("aria-describedby")) ?? "";
  return (await page.locator(`#${escaped(ids.split(" ")[0] ?? "")}`).textContent()) ?? "";
}

const escaped = (id: string): string => id.replace(/[^\w-]/g, (sign) => `\\${sign}`);

it.each([1280, 390])("proposes letters, and enters none of them unasked, %d pixels wide", async (width) => {
  const page = await browser.newPage({ viewport: { width, height: 900 } });
  await page.goto(address);
  await page.getByText(known.heading).click();
  const ask = page.getByRole("button", { name: known.propose.ask });
  // There is nothing to read yet.
  expect(await ask.count()).toBe(0);
  await page.locator("#photograph").setInputFiles("seed/demo/photographs/gorse-patent-filter-2.webp");
  await ask.click();
  const proposal = page.getByRole("button", { name: /PATENT/ }).first();
  await proposal.waitFor();
  const field = page.getByLabel(fields.letters);
  expect(await field.inputValue()).toBe("");
  expect(await violationsOf(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  await proposal.click();
  expect(await field.inputValue()).toContain("PATENT");
  expect(await field.evaluate((element) => element === document.activeElement)).toBe(true);
  await page.context().close();
});
