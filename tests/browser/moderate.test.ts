import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { HIDDEN } from "#core/entries/hidden-texts";
import messages from "../../messages/en.json" with { type: "json" };
import { checkLooks } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { contributeEntry } from "../setup/contribute-entry.ts";
import { button } from "../setup/contribute-in-browser.ts";
import { signInPage } from "../setup/sign-in.ts";

const address = inject("appAddress");
const { fields, moderate } = messages;
const REASON = "Whoever owns the copyright has asked for it in writing.";
let browser: OpenedBrowser;
let anselm: Page;
let edric: Page;

beforeAll(async () => {
  browser = await openBrowser();
  [anselm, edric] = [await browser.newPage(), await browser.newPage({ javaScriptEnabled: false })];
  await signInPage(anselm, address, "Anselm Grewitt");
  await signInPage(edric, address, "Edric Vennaby");
});
afterAll(() => browser.close());

/** Opens one of the moderator's tools and sends it. */
async function act(
  page: Page,
  entry: string,
  tool: string,
  send: string,
  fill: (form: ReturnType<Page["locator"]>) => Promise<void>,
) {
  await page.goto(`${address}${entry}/moderate`);
  const form = page.locator("details").filter({ has: page.getByText(tool, { exact: true }) });
  await form.locator("summary").click();
  await fill(form);
  await form.getByLabel(fields.reason).fill(REASON);
  await form.getByRole("button", { name: send, exact: true }).click();
  await page.waitForURL(/said=/);
}

/** Another moderator than the one who did it takes back the latest act. */
async function undo(page: Page, entry: string) {
  await act(page, entry, moderate.undo, moderate.do.undo, async () => undefined);
  expect(await page.locator("section[aria-labelledby=acts]").textContent()).toContain(
    "Undone by Edric Vennaby",
  );
}

const images = async (entry: string) => {
  const html = await (await fetch(address + entry)).text();
  return [...new Set(html.match(/\/images\/[0-9a-f]{64}/g) ?? [])];
};
const nothing = async () => undefined;

it("hides a photograph for rights, whose image is served no more, until another moderator undoes it", async () => {
  const entry = await contributeEntry(address, "Bars in a square, one photograph too many");
  const before = await images(entry);
  const tool = moderate.heading.photograph.replace("{n}", "2");
  await act(anselm, entry, tool, moderate.do.hide, async (form) => {
    await form.getByLabel(fields.ground).selectOption("rights");
  });
  const shown = await images(entry);
  const [hidden = ""] = before.filter((image) => !shown.includes(image));
  expect(shown.length).toBeLessThan(before.length);
  expect((await fetch(address + hidden)).status).toBe(410);
  await anselm.goto(`${address}${entry}/trail`);
  expect(await anselm.locator("#content").textContent()).toContain("hid a photograph for rights");
  await anselm.goto(`${address}${entry}/moderate`);
  expect(await anselm.locator("section[aria-labelledby=acts]").textContent()).toContain(moderate.ownAct);
  expect(await button(anselm, moderate.do.undo).count()).toBe(0);
  await checkLooks(anselm, `${entry}/moderate`);

  await undo(edric, entry);
  expect(await images(entry)).toEqual(before);
  expect((await fetch(address + hidden)).status).toBe(200);
});

it("hides a text for abuse on every page that showed it, until it is undone", async () => {
  const title = `Words nobody should read ${Date.now()}`;
  const entry = await contributeEntry(address, title);
  await act(anselm, entry, moderate.heading.text, moderate.do.hide, async (form) => {
    await form.getByLabel(moderate.text, { exact: true }).selectOption("title");
    await form.getByLabel(fields.ground).selectOption("abuse");
  });
  const pages = [
    entry,
    `${entry}/revisions/1`,
    `${entry}/review`,
    `${entry}/history`,
    `${entry}/trail`,
    "/review",
  ];
  for (const path of pages) {
    const page = await (await fetch(address + path)).text();
    expect(page, path).not.toContain(title);
    if (path !== "/review") expect(page, path).toContain(HIDDEN);
  }
  await undo(edric, entry);
  expect(await (await fetch(address + entry)).text()).toContain(title);
});

it("merges a duplicate: its address leads on, and back to itself once that is undone", async () => {
  const kept = await contributeEntry(address, "Bars in a square, the one that stays");
  const twice = await contributeEntry(address, "Bars in a square, the same again");
  await act(anselm, twice, moderate.heading.merge, moderate.do.merge, async (form) => {
    await form.getByLabel(fields.into).fill(address + kept);
  });
  const led = await fetch(address + twice, { redirect: "manual" });
  expect([led.status, new URL(led.headers.get("location") ?? "", address).pathname]).toEqual([308, kept]);
  await anselm.goto(`${address}/entries?words=${encodeURIComponent("the same again")}`);
  expect(await anselm.locator(`#content a[href="${twice}"]`).count()).toBe(0);
  await undo(edric, twice);
  expect((await fetch(address + twice, { redirect: "manual" })).status).toBe(200);
});

it("locks an entry, to which nothing comes until it is unlocked", async () => {
  const entry = await contributeEntry(address, "Bars in a square, sent forty times");
  await act(anselm, entry, moderate.heading.lock, moderate.do.lock, nothing);
  const senna = await browser.newPage();
  await signInPage(senna, address, "Senna Durrick");
  await senna.goto(`${address}${entry}/review`);
  expect(await button(senna, messages.review.vote).count()).toBe(0);
  expect(await senna.locator("section[aria-labelledby=your-vote]").textContent()).toContain(REASON);
  await undo(edric, entry);
  await senna.reload();
  expect(await button(senna, messages.review.vote).count()).toBe(1);
  await edric.goto(`${address}/moderation`);
  const log = await edric.locator("section[aria-labelledby=log]").textContent();
  for (const words of ["locked Bars in a square", "merged into another", "took an act back on"])
    expect(log).toContain(words);
  await senna.context().close();
});
