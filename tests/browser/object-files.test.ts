import type { Page } from "playwright-core";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { photographOfBoat } from "../setup/boat-photograph.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { openFile, PHONE, photograph, picture, said, versionsOf } from "../setup/object-file-steps.ts";
import { DEMO_MEMBERS, signInPage } from "../setup/sign-in.ts";

const address = inject("appAddress");
const words = messages.objectPages;
const [owner, other] = DEMO_MEMBERS;
if (!owner || !other) throw new Error("The demo must have two members.");

let browser: OpenedBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function onPhone(): Promise<Page> {
  const page = await browser.newPage(PHONE);
  await signInPage(page, address, owner?.id ?? "");
  return page;
}

describe("a file on a phone", () => {
  it("loses nothing when the connection is lost in the middle, and sends it when it is back", async () => {
    const page = await onPhone();
    const path = await openFile(page, address, "Boat without a connection");
    await page.goto(`${address}${path}/examine`);
    const context = page.context();
    await context.setOffline(true);
    await page.getByLabel(words.examine.observed.absent).check();
    const point = page.locator("form", { has: page.getByRole("button", { name: words.examine.saveNext }) });
    await point
      .locator('input[name="photograph"]')
      .last()
      .setInputFiles(photograph("keel.jpg", await photographOfBoat(3)));
    const place = page.locator("form h2");
    const first = await place.textContent();
    await page.getByRole("button", { name: words.examine.saveNext }).click();
    await expect.poll(() => place.textContent()).not.toBe(first);
    await page.getByText("waits in this browser").waitFor();
    await page.locator("#value").fill("typed and not sent");
    await context.setOffline(false);
    browser.forgive(/ERR_INTERNET_DISCONNECTED/);
    await expect
      .poll(async () => (await versionsOf(page, address + path)).length, { timeout: 20_000 })
      .toBe(3);
    await page.goto(`${address}${path}/examine`);
    await expect.poll(() => page.locator("#value").inputValue()).toBe("typed and not sent");
    await page.getByRole("link", { name: words.examine.previous }).click();
    expect(await page.getByLabel(words.examine.observed.absent).isChecked()).toBe(true);
    await page.locator("form img").waitFor();
  });

  it("stays at a point where something is seen until it is said what, and keeps its photograph", async () => {
    const page = await onPhone();
    const path = await openFile(page, address, "Boat with nothing said");
    await page.goto(`${address}${path}/examine`, { waitUntil: "networkidle" });
    const place = page.locator("form h2");
    const first = await place.textContent();
    const save = page.getByRole("button", { name: words.examine.saveNext });
    await page.getByLabel(words.examine.observed.seen).check();
    const image = page.locator("#point input[name='photograph']").last();
    await image.setInputFiles(photograph("keel.jpg", await photographOfBoat(3)));
    await save.click();
    await page.locator("#value-error").getByText("what is seen has to be said").waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("value");
    expect(await place.textContent()).toBe(first);
    expect(await image.evaluate((each: HTMLInputElement) => each.files?.length)).toBe(1);
    await page.locator("#value").fill("a keel");
    await expect.poll(() => page.locator("#value-error").count()).toBe(0);
    await save.click();
    await expect.poll(() => place.textContent()).not.toBe(first);
    await expect
      .poll(async () => (await versionsOf(page, address + path)).length, { timeout: 20_000 })
      .toBe(3);
    // Nothing left over of the refusal at the next point, and what is not seen has no value.
    await page.getByLabel(words.examine.observed.absent).check();
    await page.locator("#value").fill("a rudder");
    await save.click();
    await page.locator("#value-error").getByText("only what is seen has a value").waitFor();
  });

  it("is measured once all four points were placed, and no surer than a finger on its small picture", async () => {
    const page = await onPhone();
    const path = await openFile(page, address, "Boat to measure");
    const boat = picture("port-side");
    await page.locator('input[name="photograph"]').last().setInputFiles(boat);
    await page.getByRole("button", { name: words.overview.addPhotograph }).click();
    await said(page);
    await page.goto(`${address}${path}/measure`);
    await page.getByText(words.measure.choosePhotographNote).waitFor();
    await page.locator('a[href*="?on="]').first().click();
    await page.waitForLoadState("networkidle");
    const form = page.locator('form[action$="/measure-on-screen"]');
    const field = (name: string) => form.locator(`[name="${name}"]`);
    const still = (letters: string) =>
      form.getByText(words.measure.notPlaced.replace("{points}", letters)).waitFor();
    const stage = await page.getByRole("img", { name: words.measure.photograph }).boundingBox();
    const { width = 0 } = await sharp(boat.buffer).metadata();
    const coarse = Math.ceil((2 * width) / (stage?.width ?? 1));
    expect(coarse).toBeGreaterThan(8);
    await expect.poll(() => field("point_within").inputValue()).toBe(String(coarse));
    await still("A, B, C and D");
    await field("scale_mm").fill("100");
    await field("measured").selectOption("length");
    await form.getByRole("button", { name: words.save }).click();
    expect(await page.evaluate(() => document.activeElement?.getAttribute("name"))).toBe("scale_x1");
    // By keys, by numbers, by pointer.
    const handle = (name: "scale-a" | "object-b") =>
      form.getByRole("button", { name: new RegExp(`^${words.measure.points[name]}`) });
    await handle("scale-a").press("ArrowDown");
    await field("scale_x2").fill("710");
    await field("object_y1").fill("690");
    await still("D");
    const box = await handle("object-b").boundingBox();
    if (!box) throw new Error("The handle is not to be seen.");
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x, box.y);
    await page.mouse.up();
    await form.getByText(/^C to D: \d/).waitFor();
    await field("point_within").fill("3");
    expect(await field("point_within").inputValue()).toBe("3");
    await form.getByRole("button", { name: words.save }).click();
    await said(page);
    await page
      .getByText(/^Length: /)
      .first()
      .waitFor();
  });

  it("is a page of plain forms without scripts", async () => {
    const page = await browser.newPage({ ...PHONE, javaScriptEnabled: false });
    await signInPage(page, address, owner.id);
    const path = await openFile(page, address, "Boat without scripts");
    await page.goto(`${address}${path}/examine`);
    const first = await page.locator("form h2").textContent();
    await page.getByLabel(words.examine.observed["not examined"]).check();
    await page.getByRole("button", { name: words.examine.saveNext }).click();
    await said(page);
    expect(await page.locator("form h2").textContent()).not.toBe(first);
    await page.goto(`${address}${path}/condition`);
    await page.getByRole("button", { name: words.save }).click();
    await page.getByRole("alert").first().waitFor();
  });
});

describe("who is not let in", () => {
  it("gets 404 of the file, its parts and its photographs, and reads it by a link until it is revoked", async () => {
    const page = await onPhone();
    const path = await openFile(page, address, "Private boat");
    await page
      .locator('input[name="photograph"]')
      .last()
      .setInputFiles(photograph("boat.jpg", await photographOfBoat(4)));
    await page.getByRole("button", { name: words.overview.addPhotograph }).click();
    await said(page);
    const image = await page.locator("figure img").getAttribute("src");
    const stranger = await browser.newPage();
    const asStranger = async (of: string) => (await stranger.context().request.get(address + of)).status();
    expect(await asStranger(image ?? "")).toBe(404);
    await signInPage(stranger, address, other.id);
    expect(await asStranger(image ?? "")).toBe(404);
    for (const part of ["", "/examine", "/share", "/history"])
      expect(await asStranger(path + part)).toBe(404);

    await page.goto(`${address}${path}/share`);
    await page.getByRole("button", { name: words.sharing.linkMake }).click();
    const link = await page.locator('a[href^="/shared/"]').getAttribute("href");
    const anybody = await browser.newPage();
    await anybody.goto(address + link);
    await anybody.getByRole("heading", { name: "Private boat" }).waitFor();
    const shown = await anybody.locator("figure img").getAttribute("src");
    expect((await anybody.context().request.get(address + shown)).status()).toBe(200);
    await page.getByRole("button", { name: words.sharing.revoke }).click();
    await page.waitForURL(/said=revoke/);
    expect((await anybody.context().request.get(address + link)).status()).toBe(404);
    expect((await anybody.context().request.get(address + shown)).status()).toBe(404);
  });
});
