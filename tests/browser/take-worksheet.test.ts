import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { overflowOf, violationsOf } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { DEMO_MEMBERS, signInPage } from "../setup/sign-in.ts";

const address = inject("appAddress");
const { worksheet: sheet, objectPages: words } = messages;
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
const NUMBER =
  "nu*k*1906/..*990*p**Registered+design+470001*Table+of+registered+designs*Renewed+ones+are+older";
const GIFT = "st*g*1921-03-27*650***Given+at+Easter";
const [owner] = DEMO_MEMBERS;
let browser: OpenedBrowser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const evidenceIn = (page: Page) => page.locator("section[aria-labelledby=evidence]");
const take = (page: Page) => page.locator('form[action="/api/objects/take"]');

async function intoNewFile(page: Page, title: string): Promise<string> {
  await take(page).locator("[name=into]").selectOption("new");
  await take(page).locator("[name=title]").fill(title);
  await take(page).locator("[name=family]").selectOption("tin and wooden toys");
  await take(page).getByRole("button").click();
  await page.waitForURL(/\/finding\?taken=/);
  return new URL(page.url()).pathname.replace("/finding", "");
}

describe("a worksheet is taken into an object file", () => {
  it("by who signs in on the way, without scripts, with nothing lost", async () => {
    const page = await browser.newPage({ ...PHONE, javaScriptEnabled: false });
    const pieces = Array.from(
      { length: 12 },
      (_, i) => `&e=st*g*19${20 + i}*650***${"Told+again+".repeat(20)}${i}`,
    );
    await page.goto(`${address}/dates?v=1&t=Clockwork+boat&e=${NUMBER}&e=${GIFT}${pieces.join("")}`);
    await page.getByRole("link", { name: sheet.takeLink }).click();
    await page.waitForURL(/\/sign-in\?/);
    await page.getByRole("button", { name: owner?.name ?? "" }).click();
    await page.waitForURL(/\/objects\/take/);
    expect(await page.locator("section[aria-labelledby=pieces] li").count()).toBe(14);
    expect(await take(page).locator("[name=title]").inputValue()).toBe("Clockwork boat");
    // The family is missing: it is said, and nothing has to be typed again.
    await take(page).locator("[name=title]").fill("Clockwork boat, taken");
    await take(page).getByRole("button").click();
    expect(await take(page).locator("[name=title]").inputValue()).toBe("Clockwork boat, taken");
    expect(await take(page).locator("[name=family]").getAttribute("aria-invalid")).toBe("true");
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    const path = await intoNewFile(page, "Clockwork boat, taken");
    expect(await page.getByRole("status").first().textContent()).toContain(
      "14 pieces of evidence were taken",
    );
    const said = (await evidenceIn(page).textContent()) ?? "";
    for (const each of ["Registered design 470001", "Table of registered designs", "Renewed ones are older"])
      expect(said).toContain(each);
    await page.goto(`${address}${path}/history`);
    expect(await page.getByText(words.commands.pieces).count()).toBe(1);
    await page.context().close();
  });

  it("once, into a file that is there, and from the file to a worksheet and back", async () => {
    const page = await browser.newPage(PHONE);
    await signInPage(page, address, owner?.id ?? "");
    await page.goto(`${address}/dates?v=1&e=${NUMBER}&e=${GIFT}`, { waitUntil: "networkidle" });
    await page.getByRole("link", { name: sheet.takeLink }).click();
    await page.waitForURL(/\/objects\/take/);
    expect(await overflowOf(page)).toBeLessThanOrEqual(0);
    expect(await violationsOf(page)).toEqual([]);
    const title = `Boat ${Date.now()}`;
    const path = await intoNewFile(page, title);
    expect(await overflowOf(page)).toBeLessThanOrEqual(0);
    expect(await violationsOf(page)).toEqual([]);
    expect(await evidenceIn(page).locator("ol > li").count()).toBeGreaterThanOrEqual(2);

    await page.getByRole("link", { name: words.evidence.worksheet }).click();
    await page.waitForURL(/\/dates\?/);
    expect(new URL(page.url()).searchParams.getAll("e")).toHaveLength(2);
    await page.locator("#kind, [name=kind]").first().selectOption("photograph");
    await page.getByLabel(sheet.whenLabel, { exact: true }).fill("1925");
    await page.getByRole("button", { name: sheet.addButton }).click();
    await page.getByRole("heading", { name: "3. " }).waitFor();
    await page.getByRole("link", { name: sheet.takeLink }).click();
    await page.waitForURL(/\/objects\/take/);
    // The file of that title is chosen already.
    const chosen = take(page).locator("[name=into] option:checked");
    expect(await chosen.textContent()).toBe(title);
    await take(page).getByRole("button").click();
    await page.waitForURL(/taken=1&known=2/);
    expect(new URL(page.url()).pathname).toBe(`${path}/finding`);

    const report = await (await page.request.get(`${address}${path}/report`)).text();
    expect(report).toContain("Registered design 470001");
    expect(report).toContain("Table of registered designs");
    await page.goto(`${address}${path}/finding`);
    await evidenceIn(page)
      .getByRole("button", { name: /Given at Easter/ })
      .click();
    await page.waitForURL(/said=removed/);
    expect(await evidenceIn(page).textContent()).not.toContain("Given at Easter");
    await page.context().close();
  });
});
