import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { overflowOf, violationsOf } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import {
  begin,
  beginRevision,
  button,
  describeMark,
  tellOfPhotographs,
} from "../setup/contribute-in-browser.ts";
import { photographsToTry } from "../setup/photographs-to-try.ts";
import { DEMO_MEMBERS } from "../setup/sign-in.ts";

const address = inject("appAddress");
const words = messages.contribute;
const island = messages.draftIsland;
const [first, second] = photographsToTry().filter(({ entry }) => entry === null);
if (!first || !second) throw new Error("The demo must have photographs of marks that no entry has.");
const notAPhotograph = join(fileURLToPath(new URL("../..", import.meta.url)), "LICENSE");

let browser: OpenedBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** A window of a member of the demo who is no reviewer, moderator or administrator, or of another by place. */
async function signedIn(place = 0, options: Parameters<OpenedBrowser["newPage"]>[0] = {}): Promise<Page> {
  const member = DEMO_MEMBERS[place];
  if (!member) throw new Error(`The demo has no member ${place}.`);
  const page = await browser.newPage(options);
  const multipart = { member: member.id };
  const answer = await page.context().request.post(`${address}/api/sign-in/demo`, {
    multipart,
    headers: { accept: "application/json" },
  });
  expect(answer.ok()).toBe(true);
  return page;
}

const isKept = (page: Page, now: string) => page.locator(`[data-kept="${now}"]`).waitFor();

describe("a new entry", () => {
  it("is written with two photographs, saves itself, is refused in words, and submitted", async () => {
    const page = await signedIn();
    const draft = await begin(page, address);
    const files = page.locator('input[type="file"]').first();
    await files.setInputFiles([first.path, notAPhotograph, second.path]);
    await page.getByRole("group", { name: words.photograph.replace("{place}", "2") }).waitFor();
    await page.getByText("only JPEG").waitFor();
    await page.getByRole("heading", { name: island.alikeHeading }).first().waitFor();
    await describeMark(page, "Hare over a bar, letters gone");
    await page.locator("#period").fill("soon");
    await isKept(page, "saved");
    await page.reload();
    expect(await page.locator("#title").inputValue()).toBe("Hare over a bar, letters gone");

    await button(page, words.submit).click();
    await page.waitForURL(/form=/);
    const focused = await page.evaluate(() => document.activeElement?.id);
    const wrong = await page.locator('[aria-invalid="true"]').evaluateAll((all) => all.map(({ id }) => id));
    expect(wrong).toContain("period");
    expect(wrong.filter((id) => id.endsWith("-credit"))).toHaveLength(2);
    expect(wrong).toContain(focused);
    expect(await page.locator("#period").inputValue()).toBe("soon");

    await page.locator("#period").fill("1871 to 1890");
    await tellOfPhotographs(page);
    await button(page, words.save).last().click();
    await page.waitForURL(/said=saved/);
    await page.getByText("(1871/1890)").waitFor();
    await page.getByText(words.enoughVerified).waitFor();

    await button(page, words.preview).click();
    await page.waitForURL(/preview/);
    await page.getByRole("heading", { level: 1, name: "Hare over a bar, letters gone" }).waitFor();
    await page.getByRole("link", { name: words.back }).click();
    await button(page, words.submit).click();
    await page.waitForURL(/\/entries\/hare-over-a-bar-letters-gone[^/]*\/revisions\/1/);
    await page.getByText(words.said.submitted).waitFor();
    expect(await page.locator("h1").textContent()).toBe("Hare over a bar, letters gone");
    await page.goto(draft);
    expect(page.url()).toContain("/revisions/1");
    await page.goto(`${address}/contribute`);
    await page.getByRole("link", { name: "Hare over a bar, letters gone" }).last().waitFor();
    await page.context().close();
  });

  it("is written and submitted without scripts", async () => {
    const page = await signedIn(0, { javaScriptEnabled: false });
    await begin(page, address);
    await describeMark(page, "Two keys crossed, without scripts");
    await page.locator('input[type="file"]').setInputFiles([first.path]);
    await button(page, words.plainUploadGo).click();
    await page.waitForURL(/said=saved/);
    expect(await page.locator("#title").inputValue()).toBe("Two keys crossed, without scripts");
    await page.locator('input[name$="-width"]').first().fill("40");
    await page.locator('input[name$="-height"]').first().fill("40");
    await tellOfPhotographs(page);
    await button(page, words.addCitation).click();
    await page.waitForURL(/more=citation/);
    expect(await page.locator('input[name$="-width"]').first().inputValue()).toBe("40");
    await button(page, words.submit).click();
    await page.waitForURL(/\/revisions\/1/);
    await page.context().close();
  });

  it("keeps what is typed in the browser while the host does not answer", async () => {
    const page = await signedIn();
    const draft = await begin(page, address);
    await page.route("**/api/drafts/*", (route) => route.abort());
    await page.locator("#title").fill("Kept in this browser");
    await page.locator('[data-kept="failed"]').waitFor();
    await page.unroute("**/api/drafts/*");
    await page.goto(draft);
    await page.getByText(island.recovered).waitFor();
    await isKept(page, "saved");
    await page.reload();
    expect(await page.locator("#title").inputValue()).toBe("Kept in this browser");
    await page.context().close();
    browser.forgive(/ERR_FAILED/);
  });
});

describe("two at once", () => {
  it("in two windows of one draft: the second is laid beside the first, and nothing is lost", async () => {
    const one = await signedIn();
    const draft = await begin(one, address);
    const two = await one.context().newPage();
    await two.goto(draft);
    await one.locator("#title").fill("Title of the first window");
    await isKept(one, "saved");
    await two.locator("#title").fill("Title of the second window");
    await two.locator("#emblem").fill("a hare");
    await isKept(two, "newer");
    await two.getByRole("button", { name: island.compare }).click();
    await two.waitForURL(/differing/);
    for (const title of ["Title of the first window", "Title of the second window"])
      await two.getByText(title).first().waitFor();
    expect(await overflowOf(two)).toBeLessThanOrEqual(0);
    expect(await violationsOf(two)).toEqual([]);
    await two.getByRole("radio", { name: words.choose.own }).check();
    await two.locator("textarea").fill("Title of both");
    await button(two, words.takeBoth).click();
    await two.waitForURL(/said=settled/);
    expect(await two.locator("#title").inputValue()).toBe("Title of both");
    expect(await two.locator("#emblem").inputValue()).toBe("a hare");
    await one.context().close();
    browser.forgive(/409/);
  });

  it("two members at one entry: the second sees three columns, and the revision has two parents", async () => {
    const slug = "bodkin-quality-x";
    // A host that is tested again has the revisions of the last time.
    const run = String(Date.now());
    const [one, two] = [await signedIn(0), await signedIn(1)];
    await beginRevision(one, address, slug);
    await beginRevision(two, address, slug);
    await one.locator("#emblem").fill(`crown, open, ${run}`);
    await one.locator("#distinguish").fill(`The left arm is thicker, ${run}.`);
    await one.locator("#summary").fill(`Looked at six plates, ${run}.`);
    await button(one, words.submitChange).click();
    await one.waitForURL(/\/revisions\/\d+/);

    await two.locator("#emblem").fill(`queen's crown, ${run}`);
    await two.locator("#summary").fill(`The crown is a queen's, ${run}.`);
    await button(two, words.submitChange).click();
    await two.waitForURL(/meanwhile/);
    await two.getByText(`Looked at six plates, ${run}.`).waitFor();
    await two.setViewportSize({ width: 390, height: 800 });
    expect(await overflowOf(two)).toBeLessThanOrEqual(0);
    expect(await violationsOf(two)).toEqual([]);
    await two.getByRole("radio", { name: words.choose.mine }).check();
    await button(two, words.takeBoth).click();
    await two.waitForURL(/said=settled/);
    expect(await two.locator("#distinguish").inputValue()).toBe(`The left arm is thicker, ${run}.`);
    await button(two, words.submitChange).click();
    await two.waitForURL(/\/revisions\/\d+/);
    const banner = two.getByRole("complementary");
    expect(await banner.getByRole("link", { name: /^Difference from/ }).count()).toBe(2);
    await banner
      .getByRole("link", { name: /^Difference from/ })
      .first()
      .click();
    await two.waitForURL(/difference/);
    await two.getByText(run).first().waitFor();
    expect(await overflowOf(two)).toBeLessThanOrEqual(0);
    expect(await violationsOf(two)).toEqual([]);
    await two.goto(`${address}/entries/${slug}/history`);
    await two.getByText(`The crown is a queen's, ${run}.`).first().waitFor();
    await one.context().close();
    await two.context().close();
  });
});
