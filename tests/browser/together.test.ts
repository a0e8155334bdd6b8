import { afterAll, beforeAll, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { checkLooks } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import {
  begin,
  beginRevision,
  button,
  describeMark,
  tellOfPhotographs,
} from "../setup/contribute-in-browser.ts";
import { photographsToTry } from "../setup/photographs-to-try.ts";
import { vote } from "../setup/review-in-browser.ts";
import { signInPage } from "../setup/sign-in.ts";

const address = inject("appAddress");
const { contribute, review } = messages;
const files = photographsToTry()
  .filter(({ entry }) => entry === null)
  .slice(0, 2)
  .map(({ path }) => path);

let browser: OpenedBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

it.each([true, false])(
  "a draft of two authors, scripts %s: photographs are moved, the vote of the second does not count",
  async (javaScriptEnabled) => {
    const page = await browser.newPage({ javaScriptEnabled });
    await signInPage(page, address, "Nerys Ollcroft");
    await begin(page, address);
    await page.locator('input[type="file"]').first().setInputFiles(files);
    if (!javaScriptEnabled) await button(page, contribute.plainUploadGo).click();
    await page.getByRole("group", { name: contribute.photograph.replace("{place}", "2") }).waitFor();
    await describeMark(page, "Two hares back to back");
    await tellOfPhotographs(page);
    const order = () =>
      page
        .locator('input[name$="-credit"]')
        .evaluateAll((all) => all.map((each) => each.getAttribute("name")));
    const before = await order();
    await button(page, contribute.later).click();
    await page.waitForURL(/said=moved/);
    expect(await order()).toEqual([...before].reverse());
    expect(await page.locator("#title").inputValue()).toBe("Two hares back to back");

    await page.locator("#co_authors").fill("Nobody of that name");
    await button(page, contribute.submit).click();
    await page.waitForURL(/form=/);
    expect(await page.locator("#co_authors").getAttribute("aria-invalid")).toBe("true");
    await page.locator("#co_authors").fill("Corvin Athelby");
    await button(page, contribute.submit).click();
    await page.waitForURL(/\/revisions\/1/);
    const entry = new URL(page.url()).pathname.replace(/\/revisions.*/, "");

    const corvin = await browser.newPage({ javaScriptEnabled });
    await signInPage(corvin, address, "Corvin Athelby");
    await corvin.goto(`${address}${entry}/review`);
    expect(await corvin.locator("#content header").first().textContent()).toContain(
      `${review.coAuthors} Corvin Athelby`,
    );
    await corvin.getByText(review.wouldNotCount.author).waitFor();
    if (javaScriptEnabled) await checkLooks(corvin, `${entry}/review`);
    await vote(corvin, review.choose.support, "The hares are those of the sign over the shop.");
    await corvin.getByText(review.notCountedRule.author).waitFor();
    for (const each of [page, corvin]) await each.context().close();
  },
);

it("two members change two citations of one entry: each is chosen for itself", async () => {
  const slug = "bodkin-quality-x";
  const run = String(Date.now());
  const [one, two] = [await browser.newPage(), await browser.newPage()];
  await signInPage(one, address, "Nerys Ollcroft");
  await signInPage(two, address, "Jory Amblett");
  for (const page of [one, two]) await beginRevision(page, address, slug);
  // A host that is tested again may have citations of the last time.
  const places = await one.locator('input[name^="citation-"][name$="-title"]').count();
  const cite = async (page: typeof one, place: number, title: string, year: string) => {
    await page.locator(`#citation-${place}-kind`).selectOption("book");
    await page.locator(`#citation-${place}-author`).fill("M. Oldacre");
    await page.locator(`#citation-${place}-title`).fill(title);
    await page.locator(`#citation-${place}-year`).fill(year);
  };
  await cite(one, places, `Touches ${run}`, "1931");
  await cite(two, places, `Touches ${run}`, "1932");
  await button(two, contribute.addCitation).click();
  await two.waitForURL(/more=citation/);
  await cite(two, places + 1, `Moulds ${run}`, "1940");
  for (const [page, why] of [
    [one, "Cited the book of touches."],
    [two, "Cited both books."],
  ] as const)
    await page.locator("#summary").fill(`${why} ${run}`);
  await button(one, contribute.submitChange).click();
  await one.waitForURL(/\/revisions\/\d+/);
  await button(two, contribute.submitChange).click();
  await two.waitForURL(/meanwhile/);
  const conflicts = two.locator("#content fieldset");
  expect(await conflicts.count()).toBe(1);
  expect(await conflicts.first().textContent()).toContain(
    contribute.citation.replace("{place}", String(places)),
  );
  await checkLooks(two, "meanwhile");
  await two.getByRole("radio", { name: contribute.choose.theirs }).check();
  await button(two, contribute.takeBoth).click();
  await two.waitForURL(/said=settled/);
  expect(await two.locator(`#citation-${places}-year`).inputValue()).toBe("1931");
  expect(await two.locator(`#citation-${places + 1}-title`).inputValue()).toBe(`Moulds ${run}`);
  for (const each of [one, two]) await each.context().close();
});
