import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { overflowOf, violationsOf } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { photographsToTry } from "../setup/photographs-to-try.ts";

const address = inject("appAddress");
const { bench, fields, questions, questionForm, questionHistory } = messages;
const photograph = photographsToTry().find(({ entry }) => entry === null)?.path ?? "";
const WIDTHS = [1280, 390, 320];
let browser: OpenedBrowser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each([true, false])("an open question, with scripts: %s", (javaScriptEnabled) => {
  it("is published, proposed to from another browser, answered, and made an entry", async () => {
    const asker = await browser.newPage({ javaScriptEnabled });
    const answer = await lookUp(asker);
    await asker.getByRole("link", { name: questions.publishLink }).click();
    await asker.waitForURL(/\/publish$/);
    if (javaScriptEnabled) await checkLooks(asker);

    await asker.getByLabel(fields.about).fill("Too short");
    await asker.getByRole("button", { name: questionForm.publish }).click();
    await asker.waitForURL(/form=/);
    expect(await asker.getByLabel(fields.about).inputValue()).toBe("Too short");
    expect(await described(asker, "about")).toContain("Too short");
    await expectFocusOn(asker, "title");
    if (javaScriptEnabled) await checkLooks(asker);
    await asker.getByLabel(fields.title, { exact: true }).fill("Horse’s head under a tankard");
    await asker.getByLabel(fields.about).fill("A quart tankard of pewter, the mark under its base.");
    await asker.getByLabel(fields.name).fill("Ansa Hollin");
    await asker.getByLabel(fields.credit).fill("Ansa Hollin");
    await asker.getByLabel(questionForm.confirm).check();
    await asker.getByRole("button", { name: questionForm.publish }).click();
    await asker.waitForURL(/said=published/);
    const question = new URL(asker.url()).pathname;
    const privatePath = (await asker.locator("a[href*='/asker/']").getAttribute("href")) ?? "";
    expect(privatePath).toContain(`${question}/asker/`);
    if (javaScriptEnabled) await checkLooks(asker);

    const proposer = await browser.newPage({ javaScriptEnabled });
    await proposer.goto(address + question);
    expect(await proposer.getByRole("button", { name: questions.accept }).count()).toBe(0);
    expect(await proposer.getByRole("heading", { name: questions.yours }).count()).toBe(0);
    await proposeEntry(proposer, question);
    await proposeWords(proposer, question, javaScriptEnabled);

    // The asker comes from a browser that knows nothing but the private address.
    const elsewhere = await browser.newPage({ javaScriptEnabled });
    await elsewhere.goto(address + privatePath);
    await elsewhere.waitForURL(/said=known/);
    await decide(elsewhere);
    if (javaScriptEnabled) await checkLooks(elsewhere);
    await makeEntry(elsewhere, question, javaScriptEnabled);

    await proposer.goto(address + question);
    const history = await proposer.locator("section[aria-labelledby=history] li").allTextContents();
    expect(history).toHaveLength(6);
    expect(history.at(-1)).toContain("Ansa Hollin made it an entry");
    await proposer.goto(`${address}/questions`);
    expect(
      await proposer.getByRole("link", { name: "Horse’s head under a tankard" }).count(),
    ).toBeGreaterThan(0);
    if (javaScriptEnabled) await checkLooks(proposer);
    await proposer.goto(answer);
    await proposer.getByRole("link", { name: questions.toQuestion }).click();
    await proposer.waitForURL(address + question);
    for (const page of [asker, proposer, elsewhere]) await page.context().close();
  }, 180_000);
});

it("is hidden from everybody once it is withdrawn", async () => {
  const page = await browser.newPage();
  await lookUp(page);
  await page.getByRole("link", { name: questions.publishLink }).click();
  await page.waitForURL(/\/publish$/);
  await page.getByLabel(fields.title, { exact: true }).fill("A mark to be withdrawn");
  await page.getByLabel(fields.about).fill("A quart tankard of pewter, once more.");
  await page.getByLabel(fields.name).fill("Ansa Hollin");
  await page.getByLabel(fields.credit).fill("Ansa Hollin");
  await page.getByLabel(questionForm.confirm).check();
  await page.getByRole("button", { name: questionForm.publish }).click();
  await page.waitForURL(/said=published/);
  await page.getByText(questions.withdraw, { exact: true }).click();
  expect(await violationsOf(page)).toEqual([]);
  await page.getByRole("button", { name: questions.withdrawYes }).click();
  await page.getByRole("heading", { name: questions.withdrawnTitle }).waitFor();
  await checkLooks(page);
  await page.goto(`${address}/questions`);
  expect(await page.getByText("A mark to be withdrawn").count()).toBe(0);
  await page.context().close();
});

it("stands in the demo: open and answered, by words and by an entry", async () => {
  const page = await browser.newPage();
  await page.goto(`${address}/questions`);
  for (const title of ["RONDO under half a wheel", "Barrel of Ordell", "Bird on the blade", "Hedgehog over"])
    expect(await page.getByRole("link", { name: title }).count(), title).toBe(1);
  await page.getByRole("link", { name: "Hedgehog over" }).click();
  await page.waitForURL(/\/questions\/[\w-]+$/);
  await page.locator("header a[href^='/entries/']").click();
  await page.waitForURL(/\/entries\//);
  await page.locator("#content").getByRole("link", { name: "open question" }).click();
  await page.waitForURL(/\/questions\/[\w-]+$/);
  expect(await page.getByText(questionHistory.heading).count()).toBe(1);
  await page.context().close();
});

async function lookUp(page: Page): Promise<string> {
  await page.goto(address);
  await page.locator("#photograph").setInputFiles(photograph);
  await page.getByRole("button", { name: bench.lookUp, exact: true }).click();
  await page.waitForURL(/\/look-ups\/[\w-]+$/);
  return page.url();
}

async function proposeEntry(page: Page, question: string): Promise<void> {
  await page.getByRole("link", { name: questions.propose }).click();
  await page.waitForURL(/\/propose$/);
  await page.getByLabel(questionForm.find).fill(`${address}/entries/bodkin-anvil-shield`);
  await page.getByRole("button", { name: questionForm.findGo }).click();
  await page.getByRole("link", { name: /^Propose this one: T·BODKIN/ }).click();
  await page.waitForURL(/entry=/);
  await page.getByLabel(fields.reasons).fill("The beads of the frame are the same.");
  await page.getByLabel(fields.basis).selectOption("compared photographs");
  await page.getByLabel(fields.name).fill("Bram Tiller");
  await page.getByRole("button", { name: questionForm.propose }).click();
  await page.waitForURL(/said=propose/);
  expect(new URL(page.url()).pathname).toBe(question);
}

async function proposeWords(page: Page, question: string, looks: boolean): Promise<void> {
  await page.goto(`${address}${question}/propose`);
  await page.getByLabel(questionForm.find).fill("anvil");
  await page.getByRole("button", { name: questionForm.findGo }).click();
  await page.waitForURL(/find=anvil/);
  expect(await page.getByRole("link", { name: questionForm.proposeThis }).count()).toBeGreaterThan(1);
  if (looks) await checkLooks(page);
  await page.getByLabel(fields.mark).fill("Horse’s head, W·CRAY");
  await page.getByLabel(fields.reasons).fill("Too short");
  await page.getByRole("button", { name: questionForm.propose }).click();
  await page.waitForURL(/form=/);
  expect(await page.getByLabel(fields.mark).inputValue()).toBe("Horse’s head, W·CRAY");
  expect(await described(page, "reasons")).toContain("Too short");
  await expectFocusOn(page, "reasons");
  await page.getByLabel(fields.maker).fill("Wilm Cray");
  await page.getByLabel(fields.period).fill("1790/1812");
  await page.getByLabel(fields.reasons).fill("W·CRAY stands above the horse, as on a bill of 1801.");
  await page.getByLabel(fields.basis).selectOption("published source");
  await page.getByLabel(fields.name).fill("Ida Corran");
  await page.getByRole("button", { name: questionForm.propose }).click();
  await page.waitForURL(/said=propose/);
}

async function decide(page: Page): Promise<void> {
  const first = page.locator("#proposal-1");
  await first.getByText(questions.decline, { exact: true }).click();
  await first.getByLabel(fields.reason).fill("No.");
  await first.getByRole("button", { name: questions.declineYes }).click();
  await page.waitForURL(/form=/);
  expect(await first.getByLabel(fields.reason).inputValue()).toBe("No.");
  await expectFocusOn(page, "decline-1-reason");
  await first.getByLabel(fields.reason).fill("Ours has a horse, and no anvil.");
  await first.getByRole("button", { name: questions.declineYes }).click();
  await page.waitForURL(/said=decline/);
  await page.locator("#proposal-2").getByRole("button", { name: questions.accept }).click();
  await page.waitForURL(/said=accept/);
}

async function makeEntry(page: Page, question: string, looks: boolean): Promise<void> {
  await page.getByRole("link", { name: questions.enter }).click();
  await page.waitForURL(/\/entry$/);
  if (looks) await checkLooks(page);
  await page.getByLabel(fields.kind, { exact: true }).selectOption("mark");
  await page.getByLabel(fields.period).fill("1790-1812");
  // A maker made by the run before is chosen, not named anew.
  const known = await page
    .locator("#maker option", { hasText: "Wilm Cray" })
    .getAttribute("value", { timeout: 500 })
    .catch(() => null);
  if (known) {
    await page.locator("#maker").selectOption(known);
    await page.locator("#new_maker").fill("");
  } else await page.locator("#new_maker_kind").selectOption("person");
  await page.getByRole("button", { name: questionForm.lookOver }).click();
  await page.waitForURL(/form=/);
  expect(await described(page, "period")).toContain("1790-1812");
  await expectFocusOn(page, "period");
  await page.getByLabel(fields.period).fill("1790~/1812");
  await page.getByRole("button", { name: questionForm.lookOver }).click();
  await page.getByRole("heading", { name: questionForm.understood }).waitFor();
  expect(await page.locator("section[aria-labelledby=understood]").textContent()).toContain(
    "about 1790 to 1812",
  );
  if (looks) await checkLooks(page);
  // A changed period is shown once more before anything is saved.
  await page.getByLabel(fields.period).fill("1790~/1815");
  await page.getByRole("button", { name: questionForm.make }).last().click();
  await page.getByText("about 1790 to 1815").waitFor();
  await page.getByRole("button", { name: questionForm.make }).first().click();
  await page.waitForURL(/said=enter/);
  await page.locator("header a[href^='/entries/']").click();
  await page.waitForURL(/\/entries\//);
  expect(await page.locator("section[aria-labelledby=sure]").textContent()).toContain(
    messages.states["under review"],
  );
  expect(await page.locator(`#content a[href="${question}"]`).count()).toBe(1);
}

async function described(page: Page, id: string): Promise<string> {
  const field = page.locator(`#${id}`);
  expect(await field.getAttribute("aria-invalid")).toBe("true");
  const ids = (await field.getAttribute("aria-describedby")) ?? "";
  return (await page.locator(`#${ids.split(" ")[0]}`).textContent()) ?? "";
}

async function expectFocusOn(page: Page, id: string): Promise<void> {
  await page.locator(`#${id}:focus`).waitFor({ timeout: 5000 });
}

/** The page as it stands breaks no rule and fits its window, at every width, light and dark. */
async function checkLooks(page: Page): Promise<void> {
  // After a change of page without loading, Chromium asks for /favicon.ico when the theme changes, and gets none.
  await page.reload({ waitUntil: "load" });
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 800 });
      expect(await overflowOf(page), `${page.url()}, ${width} pixels wide`).toBeLessThanOrEqual(0);
      expect(await violationsOf(page), `${page.url()}, ${width} pixels wide, ${colorScheme}`).toEqual([]);
    }
  }
  await page.emulateMedia({ colorScheme: null });
  await page.setViewportSize({ width: 1280, height: 800 });
}
