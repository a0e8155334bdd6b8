import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { overflowOf, violationsOf } from "../setup/accessibility.ts";
import { photographOfBoat } from "../setup/boat-photograph.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { photographsToTry } from "../setup/photographs-to-try.ts";
import { DEMO_MEMBERS, signInPage } from "../setup/sign-in.ts";

const address = inject("appAddress");
const words = messages.objectPages;
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
const known = photographsToTry().find(({ entry }) => entry !== null);
if (!known) throw new Error("The demo must have a photograph of a mark that an entry has.");
const markPhotograph = known.path;
const [owner, other] = DEMO_MEMBERS;
if (!owner || !other) throw new Error("The demo must have two members.");

let browser: OpenedBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const file = (name: string, buffer: Buffer) => ({ name, mimeType: "image/jpeg", buffer });

async function onPhone(): Promise<Page> {
  const page = await browser.newPage(PHONE);
  await signInPage(page, address, owner?.id ?? "");
  return page;
}

async function openFile(page: Page, title: string): Promise<string> {
  await page.goto(`${address}/objects`);
  await page.getByRole("link", { name: words.open }).click();
  await page.getByLabel(words.fields.title).fill(title);
  await page.getByLabel(words.fields.family).selectOption("tin and wooden toys");
  await page.getByRole("button", { name: words.openIt }).click();
  await page.waitForURL(/\/objects\/[\w-]{20,}$/);
  return new URL(page.url()).pathname;
}

const said = (page: Page) => page.waitForURL(/said=saved/);
const save = async (page: Page, scope = "main") => {
  await page.locator(scope).getByRole("button", { name: words.save, exact: true }).first().click();
  await said(page);
};

async function addStep(page: Page, path: string, step: Readonly<Record<string, string>>): Promise<void> {
  await page.goto(`${address}${path}/provenance`);
  const form = page.locator(`form[action$="/event"]`).last();
  const more = page.getByText(words.chain.add, { exact: true });
  if (!(await form.isVisible())) await more.click();
  for (const [name, value] of Object.entries(step)) {
    const field = form.locator(`[name="${name}"]`);
    if ((await field.evaluate((each) => each.tagName)) === "SELECT") await field.selectOption(value);
    else await field.fill(value);
  }
  await form.getByRole("button", { name: words.save }).click();
  await said(page);
}

describe("a clockwork tin boat from an attic, on a phone", () => {
  it("is examined, measured, looked up, documented and found", async () => {
    const page = await onPhone();
    const path = await openFile(page, "Clockwork boat from the attic");

    await page
      .locator('input[name="photograph"]')
      .last()
      .setInputFiles(file("boat.jpg", await photographOfBoat(1)));
    await page.getByLabel(words.overview.shows).fill("The port side with a scale");
    await page.getByRole("button", { name: words.overview.addPhotograph }).click();
    await said(page);
    await page.getByRole("img", { name: "The port side with a scale" }).waitFor();

    await page.getByRole("link", { name: words.overview.begin }).click();
    const place = page.locator("form h2");
    const first = await place.textContent();
    await page.getByLabel(words.examine.observed.seen).check();
    const option = page.locator("#option");
    if (await option.isVisible()) await option.selectOption({ index: 1 });
    else await page.locator("#value").fill("Seen along the keel");
    await page.getByRole("button", { name: words.examine.saveNext }).click();
    await expect.poll(() => place.textContent()).not.toBe(first);
    await page.getByLabel(words.examine.observed.absent).check();
    await page.getByRole("button", { name: words.examine.saveNext }).click();
    await expect.poll(async () => (await versionsOf(page, path)).length).toBe(4);

    await page.goto(`${address}${path}/measure`);
    const rule = page.locator('form[action$="/measurement"]').last();
    await rule.locator('[name="measured"]').selectOption("height-standing");
    await rule.locator('[name="amount"]').fill("16 cm");
    await rule.getByRole("button", { name: words.save }).click();
    await said(page);
    await page.getByText("160").first().waitFor();
    await measureOnScreen(page, path);
    const line = page.locator('form[action$="/line"]');
    await line.locator('[name="name"]').fill("Harbour launches");
    await line.locator('[name="when"]').fill("1914 to 1927");
    await line.locator('[name="sizes"]').fill("17, 22, 28");
    await line.getByRole("button", { name: words.save }).click();
    await said(page);
    await page.getByText(messages.sizesPage.verdicts["conventions-disagree"]).waitFor();

    await page.goto(`${address}${path}/marks`);
    const mark = page.locator('form[action$="/mark"]').last();
    await mark.locator('[name="photograph"]').last().setInputFiles(markPhotograph);
    await mark.locator('[name="place"]').fill("under the hull");
    await mark.locator('[name="words"]').fill("A mark struck twice");
    await mark.getByRole("button", { name: words.save }).click();
    await said(page);
    await page.getByRole("button", { name: words.match.lookUp, exact: true }).click();
    await page.getByRole("button", { name: words.match.accept }).first().click();
    await said(page);
    await page.getByText(words.match.acceptedAs).waitFor();
    await page.getByText(/Revision \d+/).waitFor();

    await addStep(page, path, { kind: "given", when: "August 1922", to: "Oda", told: "For her birthday." });
    await addStep(page, path, {
      kind: "inherited",
      when: "1968",
      from: "Oda",
      to: "Tam",
      passage: "by descent to",
    });
    await page.getByText("August 1922").first().waitFor();
    await page.getByText(words.chain.addDocument).click();
    const letter = page.locator('form[action$="/document"]').last();
    await letter.locator('[name="kind"]').selectOption("letter");
    await letter.locator('[name="title"]').fill("A grandchild's letter");
    await letter.locator('[name="transcription"]').fill("It was given to her in August. ".repeat(900));
    await letter
      .locator('[name="photograph"]')
      .last()
      .setInputFiles(file("letter.jpg", await photographOfBoat(2)));
    await letter.getByRole("button", { name: words.save }).click();
    await said(page);
    await page.getByRole("img", { name: "Scan of A grandchild's letter" }).waitFor();

    await page.goto(`${address}${path}/condition`);
    await page.locator('[name="condition"]').selectOption("corroded");
    await save(page);

    await page.goto(`${address}${path}/finding`);
    const finding = page.locator('form[action$="/finding"]');
    await finding.locator('[name="rung"]').selectOption("by");
    await finding.getByRole("button", { name: words.finding.state }).click();
    await page.locator('form[action$="/finding"] [role="alert"]').first().waitFor();
    await finding.locator('[name="maker"]').fill("Osprey & Tarn");
    await finding.locator('[name="rung"]').selectOption("attributed to");
    await finding.getByRole("button", { name: words.finding.state }).click();
    await said(page);

    await page.goto(`${address}${path}`);
    const order = await page.locator("main h2").allTextContents();
    const { sure, why, against, who } = words.overview;
    expect(order.filter((each) => [sure, why, against, who].includes(each))).toEqual([
      sure,
      why,
      against,
      who,
    ]);
    await page.getByText("Attributed to Osprey & Tarn").waitFor();
    for (const part of [
      "",
      "/examine",
      "/measure",
      "/marks",
      "/provenance",
      "/condition",
      "/finding",
      "/share",
      "/history",
    ]) {
      await page.goto(address + path + part);
      expect([part, await overflowOf(page)]).toEqual([part, 0]);
      expect([part, await violationsOf(page)]).toEqual([part, []]);
    }
  }, 180_000);

  it("loses nothing when the connection is lost in the middle, and sends it when it is back", async () => {
    const page = await onPhone();
    const path = await openFile(page, "Boat without a connection");
    await page.goto(`${address}${path}/examine`);
    const context = page.context();
    await context.setOffline(true);
    await page.getByLabel(words.examine.observed.absent).check();
    await page
      .locator('input[name="photograph"]')
      .last()
      .setInputFiles(file("keel.jpg", await photographOfBoat(3)));
    const place = page.locator("form h2");
    const first = await place.textContent();
    await page.getByRole("button", { name: words.examine.saveNext }).click();
    await expect.poll(() => place.textContent()).not.toBe(first);
    await page.getByText("waits in this browser").waitFor();
    await page.locator("#value").fill("typed and not sent");
    await context.setOffline(false);
    browser.forgive(/ERR_INTERNET_DISCONNECTED/);
    await expect.poll(async () => (await versionsOf(page, path)).length, { timeout: 20_000 }).toBe(3);
    await page.goto(`${address}${path}/examine`);
    await expect.poll(() => page.locator("#value").inputValue()).toBe("typed and not sent");
    await page.getByRole("link", { name: words.examine.previous }).click();
    expect(await page.getByLabel(words.examine.observed.absent).isChecked()).toBe(true);
    await page.locator("form img").waitFor();
  });

  it("is a page of plain forms without scripts", async () => {
    const page = await browser.newPage({ ...PHONE, javaScriptEnabled: false });
    await signInPage(page, address, owner.id);
    const path = await openFile(page, "Boat without scripts");
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
    const path = await openFile(page, "Private boat");
    await page
      .locator('input[name="photograph"]')
      .last()
      .setInputFiles(file("boat.jpg", await photographOfBoat(4)));
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

async function versionsOf(page: Page, path: string): Promise<readonly string[]> {
  const answer = await page.context().request.get(`${address}${path}/history`);
  return [...new Set((await answer.text()).match(/id="version-\d+"/g) ?? [])];
}

/** The scale's 200 pixels are 100 mm, the hull's 490 are 245. */
async function measureOnScreen(page: Page, path: string): Promise<void> {
  await page.goto(`${address}${path}/measure`);
  await page.locator('a[href*="?on="]').first().click();
  await page.waitForLoadState("networkidle");
  const screen = page.locator('form[action$="/measure-on-screen"]');
  const points = {
    scale_x1: 200,
    scale_y1: 356,
    scale_x2: 400,
    scale_y2: 356,
    object_x1: 50,
    object_y1: 160,
    object_x2: 540,
    object_y2: 159,
  };
  await screen.locator('[name="scale_mm"]').fill("100");
  for (const [name, at] of Object.entries(points)) await screen.locator(`[name="${name}"]`).fill(String(at));
  // By keys: one down.
  await screen
    .getByRole("button", { name: new RegExp(`^${words.measure.points["object-b"]}`) })
    .press("ArrowDown");
  expect(await screen.locator('[name="object_y2"]').inputValue()).toBe("160");
  await screen.getByText("C to D: 245 mm").waitFor();
  await screen.locator('[name="measured"]').selectOption("length");
  await screen.getByRole("button", { name: words.save }).click();
  await said(page);
  await page
    .getByText(/^Length: 245 mm/)
    .first()
    .waitFor();
}
