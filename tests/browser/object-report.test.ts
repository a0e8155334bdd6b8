import type { Page } from "playwright-core";
import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { checkLooks } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { keepSteamer } from "../setup/keep-steamer.ts";
import { DEMO_MEMBERS, signInAs, takeCookie } from "../setup/sign-in.ts";

const address = inject("appAddress");
const [owner] = DEMO_MEMBERS;

let browser: OpenedBrowser;
let cookie = "";
let path = "";
beforeAll(async () => {
  browser = await openBrowser();
  cookie = await signInAs(address, owner?.id ?? "");
  path = await keepSteamer(address, cookie);
}, 180_000);
afterAll(() => browser.close());

/** The report once all its marks are laid over their references; what is waiting is asked for again. */
async function openReport(options: Parameters<OpenedBrowser["newPage"]>[0] = {}): Promise<Page> {
  const page = await browser.newPage(options);
  await takeCookie(page, address, cookie);
  const waiting = page.getByText(messages.objectReport.page.waiting);
  await expect
    .poll(
      async () => {
        await page.goto(`${address}${path}/report`, { timeout: 90_000 });
        return waiting.count();
      },
      { timeout: 60_000, interval: 1500 },
    )
    .toBe(0);
  return page;
}

describe("the report of a file told to the end", () => {
  it("breaks no rule of accessibility and fits every screen, in light and in dark", async () => {
    const page = await openReport();
    await checkLooks(page, "report");
    await page.emulateMedia({ colorScheme: "dark" });
    await checkLooks(page, "report, dark");
  }, 180_000);

  it("has every section under its heading, in their order", async () => {
    const page = await openReport();
    const shown = await page.locator("main article h2").allTextContents();
    expect(shown.filter((each) => Object.values(messages.objectReport.sections).includes(each))).toEqual(
      Object.values(messages.objectReport.sections),
    );
  }, 120_000);

  it("lays both printed marks over their reference with the same nine places numbered, without scripts too", async () => {
    const page = await openReport({ javaScriptEnabled: false });
    const on = await page.getByRole("img", { name: /^The mark on the object, 9 places numbered/ }).all();
    expect(on).toHaveLength(2);
    for (const each of on)
      expect(await each.locator("text").allTextContents()).toEqual([
        "1",
        "2",
        "3",
        "4",
        "5",
        "6",
        "7",
        "8",
        "9",
      ]);
    const over = page.getByRole("img", { name: "laid over the reference" });
    await expect.poll(() => over.count()).toBe(2);
    // What lies over the reference fills its place: it is neither missing nor beside it.
    for (const each of await over.all()) {
      const [frame, own] = [await each.boundingBox(), await each.locator("img").boundingBox()];
      expect(frame && own && own.x < frame.x + frame.width && own.x + own.width > frame.x).toBe(true);
      expect(frame && own && own.y < frame.y + frame.height && own.y + own.height > frame.y).toBe(true);
    }
  }, 120_000);

  it("prints on 2 to 8 pages of A4, all that it says and nothing to press", async () => {
    const page = await openReport();
    const printed = await page.pdf({ format: "A4", preferCSSPageSize: true });
    const pdf = await getDocumentProxy(new Uint8Array(printed));
    expect(pdf.numPages).toBeGreaterThanOrEqual(2);
    expect(pdf.numPages).toBeLessThanOrEqual(8);
    const text = (await extractText(pdf, { mergePages: true })).text.replace(/\s+/g, "");
    for (const heading of Object.values(messages.objectReport.sections))
      expect(text).toContain(heading.replace(/\s/g, ""));
    expect(text).toContain("notavaluationandnotaguaranteeofauthenticity");
    expect(text).not.toContain(messages.objectReport.page.pdfLetter.replace(/\s/g, ""));
  }, 120_000);
});
