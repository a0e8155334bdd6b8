import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { checkLooks } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { contributeEntry } from "../setup/contribute-entry.ts";
import { cast, vote } from "../setup/review-in-browser.ts";
import { DEMO_MEMBERS } from "../setup/sign-in.ts";

const address = inject("appAddress");
const { challenge, fields, review } = messages;
let browser: OpenedBrowser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each([true, false])("a review, with scripts: %s", (javaScriptEnabled) => {
  it("verifies by votes and an answer; then there is a challenge, a decision, an appeal", async () => {
    const as = async (name: string) => signedIn(name, javaScriptEnabled);
    const senna = await as("Senna Durrick");
    const entry = await contributeEntry(
      address,
      `Bars in a square, ${javaScriptEnabled ? "with" : "without"} scripts`,
    );
    await senna.goto(`${address}/review`);
    if (javaScriptEnabled) await checkLooks(senna, "/review");
    await senna.locator(`a[href="${entry}/review"]`).click();
    await senna.waitForURL(`${address}${entry}/review`);
    await refuseShort(senna);
    await vote(senna, review.choose.support, "The wheel of both is struck in the same wet clay.");
    if (javaScriptEnabled) await checkLooks(senna, `${entry}/review`);

    const ottoline = await as("Ottoline Sarn");
    await ottoline.goto(`${address}${entry}/review`);
    await vote(ottoline, review.choose.support, "I compared it with the two jars of our own store.");
    const philippa = await as("Philippa Scorth");
    await philippa.goto(`${address}${entry}/review`);
    await vote(philippa, review.choose.oppose, "The second photograph may show a later stamp.");
    expect(await philippa.locator("section[aria-labelledby=standing]").textContent()).toContain(
      "Philippa Scorth",
    );

    await ottoline.reload();
    await ottoline.getByText(review.answer, { exact: true }).click();
    await ottoline
      .getByLabel(fields.answer)
      .fill("The later stamp has a hub of five spokes, and this one has six.");
    await ottoline.getByRole("button", { name: review.answerSend, exact: true }).click();
    await ottoline.waitForURL(/said=answer/);
    expect(await ottoline.locator("section[aria-labelledby=standing]").textContent()).toContain(
      review.ended.verified,
    );

    const jory = await as("Jory Amblett");
    await jory.goto(address + entry);
    await jory.getByRole("link", { name: messages.entryReview.challenge, exact: true }).click();
    await jory.waitForURL(/\/challenge$/);
    if (javaScriptEnabled) await checkLooks(jory, `${entry}/challenge`);
    await jory.getByLabel(fields.claim).selectOption("wrong period");
    await jory.getByLabel(fields.evidence).fill("The lists of the kiln name this stamp twenty years later.");
    await jory.getByRole("button", { name: challenge.send, exact: true }).click();
    await jory.waitForURL(/\/challenges\/[\w-]+\?said=challenge/);
    const page = new URL(jory.url()).pathname;
    await jory.goto(address + entry);
    expect(await jory.locator("#content header").textContent()).toContain(messages.states.disputed);
    expect(await jory.locator("#content").textContent()).toContain("twenty years later");

    const anselm = await as("Anselm Grewitt");
    await anselm.goto(`${address}/moderation`);
    if (javaScriptEnabled) await checkLooks(anselm, "/moderation");
    await anselm.locator(`a[href="${page}"]`).click();
    await anselm.waitForURL(address + page);
    if (javaScriptEnabled) await checkLooks(anselm, page);
    await anselm.getByLabel(fields.ruling).selectOption("dismissed");
    await anselm.getByLabel(fields.consequence).selectOption("no change");
    await anselm
      .getByLabel(fields.reason)
      .fill("The lists name another stamp of the same kiln, which has five spokes and not six.");
    await anselm.getByRole("button", { name: challenge.decide, exact: true }).click();
    await anselm.waitForURL(/said=decide/);

    await jory.goto(address + page);
    await jory.getByLabel(fields.reason).fill("The lists name six spokes, on their second leaf.");
    await jory.getByRole("button", { name: challenge.appealSend, exact: true }).click();
    await jory.waitForURL(/said=appeal/);
    if (javaScriptEnabled) await checkLooks(jory, page);

    await jory.goto(`${address}${entry}/trail`);
    const story = (await jory.locator("ol > li").allTextContents()).map((line) => line.replace(/\s+/g, " "));
    expect(story.filter((line) => line.includes("voted"))).toHaveLength(3);
    for (const words of [
      "answered the vote of Philippa Scorth",
      "was verified",
      "challenged",
      "dismissed",
      "appealed",
    ])
      expect(
        story.some((line) => line.includes(words)),
        words,
      ).toBe(true);
    if (javaScriptEnabled) await checkLooks(jory, `${entry}/trail`);
    for (const each of [senna, ottoline, philippa, jory, anselm]) await each.context().close();
  }, 240_000);
});

it("holds a vote for a minute, in which it is undone", async () => {
  const page = await signedIn("Senna Durrick", true);
  const entry = await contributeEntry(address, "Bars in a square, held");
  await page.goto(`${address}${entry}/review`);
  // Keys come with the scripts.
  await page.getByLabel(review.useKeys).waitFor();
  await page.keyboard.press("o");
  expect(await page.getByLabel(review.choose.oppose).isChecked()).toBe(true);
  await page.getByLabel(fields.reason, { exact: true }).fill("A vote that is never sent to anybody.");
  await page.getByRole("button", { name: review.vote, exact: true }).click();
  await page.getByRole("button", { name: review.undo, exact: true }).click();
  await page.reload();
  expect(await page.getByText(review.noVotes).count()).toBe(1);

  await page.getByLabel(review.useKeys).uncheck();
  await page.reload();
  expect(await page.getByLabel(review.useKeys).isChecked()).toBe(false);
  await page.locator("h1").click();
  await page.keyboard.press("s");
  expect(await page.getByLabel(review.choose.support).isChecked()).toBe(false);
  await page.context().close();
});

it("offers no vote to who is not signed in, and says why", async () => {
  const page = await browser.newPage();
  const entry = await contributeEntry(address, "Bars in a square, read");
  await page.goto(`${address}${entry}/review`);
  expect(await page.getByRole("button", { name: review.vote, exact: true }).count()).toBe(0);
  expect(await page.locator("section[aria-labelledby=your-vote]").textContent()).toContain(review.noVote);
  await page.context().close();
});

async function signedIn(name: string, javaScriptEnabled: boolean): Promise<Page> {
  const member = DEMO_MEMBERS.find((each) => each.name === name);
  const page = await browser.newPage({ javaScriptEnabled });
  const answer = await page.context().request.post(`${address}/api/sign-in/demo`, {
    multipart: { member: member?.id ?? "" },
    headers: { accept: "application/json" },
  });
  expect(answer.ok(), name).toBe(true);
  return page;
}

async function refuseShort(page: Page): Promise<void> {
  await cast(page, review.choose.support, "Too short");
  await page.waitForURL(/form=/);
  const reason = page.getByLabel(fields.reason, { exact: true });
  expect(await reason.inputValue()).toBe("Too short");
  expect(await reason.getAttribute("aria-invalid")).toBe("true");
  expect(await page.evaluate(() => document.activeElement?.id)).toBe("reason");
}
