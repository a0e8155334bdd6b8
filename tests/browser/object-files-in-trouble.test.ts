import { randomBytes, randomUUID } from "node:crypto";
import type { Page } from "playwright-core";
import sharp from "sharp";
import { getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { photographOfBoat } from "../setup/boat-photograph.ts";
import { openBreakableLine } from "../setup/breakable-line.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { fillIn, openFile, PHONE, photograph, said, versionsOf } from "../setup/object-file-steps.ts";
import { DEMO_MEMBERS, signInPage } from "../setup/sign-in.ts";

const address = inject("appAddress");
const words = messages.objectPages;
const [owner] = DEMO_MEMBERS;

describe("an object file on a phone, when things go wrong", () => {
  let browser: OpenedBrowser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  const open = async (title: string): Promise<{ page: Page; file: string }> => {
    const page = await browser.newPage(PHONE);
    await signInPage(page, address, owner?.id ?? "");
    return { page, file: address + (await openFile(page, address, title)) };
  };
  const steps = (file: string) => `${file}/provenance`;
  const alert = (page: Page, form: string) =>
    page.locator(`form[action$="/${form}"]`).last().locator('[role="alert"]').first();

  it.each([
    ["31 February 1921", /31 February 1921/],
    ["the day before yesterday", /the day before yesterday/],
    ["1927 to 1914", /1927 to 1914/],
    ["May 3021", /May 3021/],
  ])("refuses the date %s in words, with all that was typed", async (when, named) => {
    const { page, file } = await open("A date that cannot be");
    const fields = { kind: "given", when, to: "Jonas Trell", told: "He had it from his aunt." };
    await fillIn(page, steps(file), { form: "event", open: words.chain.add, fields });
    await alert(page, "event").waitFor();
    browser.forgive(/422/);
    expect(await alert(page, "event").textContent()).toMatch(named);
    const form = page.locator('form[action$="/event"]').last();
    expect(await form.locator('[name="when"]').inputValue()).toBe(when);
    expect(await form.locator('[name="told"]').inputValue()).toBe("He had it from his aunt.");
    expect(await versionsOf(page, file)).toHaveLength(1);
  });

  it("refuses owners that go round in a circle, and names them", async () => {
    const { page, file } = await open("A circle of owners");
    const pass = (from: string, to: string) =>
      fillIn(page, steps(file), {
        form: "event",
        open: words.chain.add,
        fields: { kind: "given", from, to },
      });
    await pass("Oda", "Tam");
    await said(page);
    await pass("Tam", "Mara");
    await said(page);
    await pass("Mara", "Oda");
    await alert(page, "event").waitFor();
    browser.forgive(/422/);
    const told = (await alert(page, "event").textContent()) ?? "";
    for (const name of ["Oda", "Tam", "Mara"]) expect(told).toContain(name);
    expect(await page.locator('form[action$="/event"]').last().locator('[name="from"]').inputValue()).toBe(
      "Mara",
    );
  });

  it("refuses a document that is no picture by its bytes, keeps the words, and stores nothing", async () => {
    const { page, file } = await open("A letter as a text file");
    const image = {
      name: "letter.jpg",
      mimeType: "image/jpeg",
      buffer: Buffer.from("Dear Mara, ".repeat(400)),
    };
    const fields = { kind: "letter", title: "Letter", transcription: "Dear Mara" };
    await fillIn(page, steps(file), { form: "document", open: words.chain.addDocument, image, fields });
    await alert(page, "document").waitFor();
    browser.forgive(/422/);
    expect(await alert(page, "document").textContent()).toContain("letter.jpg");
    const form = page.locator('form[action$="/document"]').last();
    expect(await form.locator('[name="transcription"]').inputValue()).toBe("Dear Mara");
    expect(await versionsOf(page, file)).toHaveLength(1);
  });

  it("takes 200 photographs and 5,000 words, says no to one more, and prints eight pages at most", async () => {
    const { page, file } = await open("A file that is full");
    const id = new URL(file).pathname.split("/").at(-1) ?? "";
    const send = async (n: number) => {
      const buffer = await sharp({
        create: { width: 40, height: 30, channels: 3, background: { r: n, g: 255 - n, b: n } },
      })
        .jpeg()
        .toBuffer();
      const multipart = {
        id: randomUUID(),
        version: "1",
        shows: `View ${n}`,
        photograph: photograph("v.jpg", buffer),
      };
      const headers = { accept: "application/json" };
      return page.context().request.post(`${address}/api/objects/${id}/photograph`, { multipart, headers });
    };
    for (let n = 0; n < 200; n++) expect((await send(n)).status()).toBe(200);
    const refused = await send(200);
    expect(refused.status()).toBe(422);
    expect(JSON.stringify(await refused.json())).toContain("200");
    const transcription = Array.from({ length: 5000 }, (_, n) => `word${n % 977}`).join(" ");
    await fillIn(page, steps(file), {
      ...{ form: "document", open: words.chain.addDocument },
      fields: { kind: "interview", title: "Told at the kitchen table", transcription },
    });
    await said(page);
    await page.goto(file);
    expect(await page.locator("figure img").count()).toBe(200);
    const started = Date.now();
    const answer = await page.context().request.get(`${file}/report.pdf?paper=a4`);
    console.log(`200 photographs and 5,000 words: PDF in ${Date.now() - started} ms`);
    const pdf = await getDocumentProxy(new Uint8Array(await answer.body()));
    expect(pdf.numPages).toBeLessThanOrEqual(8);
  }, 120_000);

  it("goes on with an upload that broke off in the middle", async () => {
    const line = await openBreakableLine(address);
    try {
      const page = await browser.newPage(PHONE);
      await signInPage(page, line.address, owner?.id ?? "");
      const file = line.address + (await openFile(page, line.address, "Cut off on the way"));
      await page.goto(file);
      await page.waitForLoadState("networkidle");
      // Noise does not shrink: half a megabyte, of which a part gets through.
      const noise = sharp(randomBytes(900 * 700 * 3), { raw: { width: 900, height: 700, channels: 3 } });
      const picture = photograph("attic.jpg", await noise.jpeg({ quality: 80 }).toBuffer());
      expect(picture.buffer.length).toBeGreaterThan(300_000);
      await page.locator('input[name="photograph"]').last().setInputFiles(picture);
      await page.getByLabel(words.overview.shows).fill("Taken in the attic");
      line.breakAfter(150_000);
      await page.getByRole("button", { name: words.overview.addPhotograph }).click();
      await page.getByText("waits in this browser").first().waitFor();
      expect(line.isBroken()).toBe(true);
      line.mend();
      expect(await versionsOf(page, file)).toHaveLength(1);
      // Without a word from the person: it is tried again every few seconds.
      await expect.poll(async () => (await versionsOf(page, file)).length, { timeout: 30_000 }).toBe(2);
      await page.goto(file);
      await page.getByRole("img", { name: "Taken in the attic" }).waitFor({ state: "attached" });
      browser.forgive(/net::ERR_/);
      await page.close();
    } finally {
      await line.end();
    }
  }, 90_000);

  it("sends what waited when the phone was closed and opened again", async () => {
    const { page, file } = await open("Closed on the way");
    await page.goto(`${file}/condition`);
    await page.waitForLoadState("networkidle");
    await page.context().setOffline(true);
    await page.locator('[name="condition"]').selectOption("chipped");
    await page
      .locator('[name="photograph"]')
      .last()
      .setInputFiles(photograph("chip.jpg", await photographOfBoat(9)));
    await page.getByRole("button", { name: words.save }).click();
    await page.getByText("waits in this browser").first().waitFor();
    const context = page.context();
    await page.close();
    await context.setOffline(false);
    browser.forgive(/ERR_INTERNET_DISCONNECTED/);
    const again = await context.newPage();
    await again.goto(file);
    await expect.poll(async () => (await versionsOf(again, file)).length, { timeout: 30_000 }).toBe(3);
  }, 60_000);
});
