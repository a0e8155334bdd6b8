import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Link } from "#core/trail/link";
import messages from "../../messages/en.json" with { type: "json" };
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { checkTrail } from "../setup/check-trail.ts";
import {
  begin,
  beginRevision,
  button,
  describeMark,
  tellOfPhotographs,
} from "../setup/contribute-in-browser.ts";
import {
  appoint,
  appointAdministrator,
  clientAddress,
  type Joined,
  joinAs,
  runProgram,
} from "../setup/join-members.ts";
import { photographsToTry } from "../setup/photographs-to-try.ts";
import { vote } from "../setup/review-in-browser.ts";
import { takeCookie } from "../setup/sign-in.ts";
import { type Host, onEmbedded, onServer } from "../setup/story-hosts.ts";

const { accountMenu, challenge, contribute, entryReview, fields, join: joining, review, states } = messages;
const [first, second, third] = photographsToTry().filter(({ entry }) => entry === null);
if (!first || !second || !third)
  throw new Error("The demo must have photographs of marks that no entry has.");

describe("on the embedded database", () => tellStory(onEmbedded));
describe.skipIf(!process.env.TEST_DATABASE_URL)("on a database server", () => tellStory(onServer));

function tellStory(open: () => Promise<Host>): void {
  let host: Host;
  let browser: OpenedBrowser;
  beforeAll(async () => {
    [host, browser] = await Promise.all([open(), openBrowser()]);
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    await host?.end();
  });

  it("a stranger joins and contributes; others review, challenge, decide and hear an appeal; all of it is kept", async () => {
    const { address, env } = host;
    const { reviewers, moderators, challenger } = await people(host);
    const as = (who: Joined) => signedIn(browser, address, who);

    const author = await joinInBrowser(browser, address);
    const entry = await contributeEntry(author, address);
    const slug = entry.replace("/entries/", "");
    const voters = await Promise.all(reviewers.map(as));
    for (const voter of voters) await findOnDesk(voter, address, entry);
    await voteInTurn(voters);
    await expectState(author, address, entry, states.verified);

    const against = await as(challenger);
    const claim = await challengeEntry(against, address, entry);
    await expectState(against, address, entry, states.disputed);

    await beginRevision(author, address, slug);
    await author.locator("#period").fill("1890/1914");
    await author.locator("#summary").fill("The challenge is right that the list of 1871 lacks it.");
    await button(author, contribute.submitChange).click();
    await author.waitForURL(/\/revisions\/2/);

    const [deciding, ...others] = moderators;
    if (!deciding) throw new Error("There must be a moderator.");
    await decide(await as(deciding), address, claim);
    await expectState(author, address, entry, states["under review"]);

    await against.goto(address + claim);
    await against
      .getByLabel(fields.reason)
      .fill("All of it was wrong: the mark is no mark of that shop at all.");
    await button(against, challenge.appealSend).click();
    await against.waitForURL(/said=appeal/);
    for (const [i, moderator] of others.entries())
      await hearAppeal(await as(moderator), address, claim, i === 1 ? "overturn" : "let stand");
    await against.reload();
    await against.getByText(challenge.outcome.stands, { exact: true }).waitFor();

    for (const voter of voters) await voter.goto(`${address}${entry}/review`);
    await voteInTurn(voters);
    await expectState(author, address, entry, states.verified);
    await expectStory(author, address, entry);

    const trail = await (await fetch(`${address}${entry}/trail.json`)).text();
    const links = JSON.parse(trail) as readonly Link[];
    const last = links.at(-1)?.hash;
    expect(checkTrail(trail)).toEqual({
      whole: true,
      said: `${links.length} links, all whole. Last hash: ${last}`,
    });
    expect(checkTrail(trail.replace("upheld in part", "upheld in full")).whole).toBe(false);
    expect(await runProgram(env, "scripts/verify-trail.ts", "--entry", slug)).toContain(
      `1 trail, ${links.length} links`,
    );
    for (const page of [author, against, ...voters]) await page.context().close();
  }, 180_000);
}

/** Everybody but the author: joined, and appointed by an administrator whom the host appointed. */
async function people({ address, env }: Host) {
  const joined = (names: readonly string[]) => Promise.all(names.map((name) => joinAs(address, name)));
  const [[keeper], reviewers, moderators, [challenger]] = await Promise.all([
    joined(["Una Garrick"]),
    joined(["Ada Holt", "Ben Arle", "Cleo Vann"]),
    joined(["Mira Sole", "Nils Orde", "Olga Pell", "Per Quist"]),
    joined(["Dora Kemp"]),
  ]);
  if (!keeper || !challenger) throw new Error("Everybody must have joined.");
  await appointAdministrator(env, keeper.email);
  for (const reviewer of reviewers) await appoint(address, keeper, reviewer, "metalwork");
  for (const moderator of moderators) await appoint(address, keeper, moderator, "moderator");
  return { reviewers, moderators, challenger };
}

async function signedIn(browser: OpenedBrowser, address: string, { cookie }: Joined): Promise<Page> {
  const page = await browser.newPage();
  await takeCookie(page, address, cookie);
  return page;
}

async function joinInBrowser(browser: OpenedBrowser, address: string): Promise<Page> {
  const page = await browser.newPage({ extraHTTPHeaders: { "x-forwarded-for": clientAddress() } });
  await page.goto(address);
  await page.getByRole("link", { name: accountMenu.signIn }).click();
  await page.locator("#content").getByRole("link", { name: "Join" }).click();
  await page.waitForURL(/\/join/);
  await page.getByLabel(fields.name).fill("Ida Corran");
  await page.getByLabel(fields.email).fill(`${crypto.randomUUID()}@example.org`);
  await page.getByLabel(fields.password).fill("a pewter flagon, 1803");
  await button(page, joining.go).click();
  await page.waitForURL(/\/account/);
  return page;
}

/** @returns path of the entry */
async function contributeEntry(page: Page, address: string): Promise<string> {
  await begin(page, address);
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles([first?.path ?? "", second?.path ?? ""]);
  await page.getByRole("group", { name: contribute.photograph.replace("{place}", "2") }).waitFor();
  await describeMark(page, "Thistle between two dots");
  await page.locator("#period").fill("1871/1914");
  await tellOfPhotographs(page);
  await button(page, contribute.submit).click();
  await page.waitForURL(/\/revisions\/1/);
  return new URL(page.url()).pathname.replace(/\/revisions.*/, "");
}

async function findOnDesk(page: Page, address: string, entry: string): Promise<void> {
  await page.goto(`${address}/review`);
  await page.locator(`a[href="${entry}/review"]`).click();
  await page.waitForURL(`${address}${entry}/review`);
}

async function voteInTurn(pages: readonly Page[]): Promise<void> {
  for (const [i, page] of pages.entries())
    await vote(page, review.choose.support, `Both impressions agree with plate ${i + 3} of my own copy.`);
}

/** @returns path of the challenge */
async function challengeEntry(page: Page, address: string, entry: string): Promise<string> {
  await page.goto(address + entry);
  await page.getByRole("link", { name: entryReview.challenge, exact: true }).click();
  await page.waitForURL(/\/challenge$/);
  await page.getByLabel(fields.claim).selectOption("wrong period");
  await page
    .getByLabel(fields.evidence)
    .fill("The list of 1871 names every stamp of the shop, and not this one.");
  await page.getByText(challenge.citation.replace("{place}", "1"), { exact: true }).first().click();
  await page.locator("#citation-1-kind").selectOption("catalogue");
  await page.locator("#citation-1-author").fill("The guild of the lower town");
  await page.locator("#citation-1-title").fill("List of the stamps in use");
  await page.locator("#citation-1-year").fill("1871");
  await page.locator("#citation-1-place").fill("leaf 4");
  await page.getByText(challenge.photograph.replace("{place}", "1"), { exact: true }).first().click();
  await page.locator("#photograph-0").setInputFiles(third?.path ?? "");
  await page.locator("#photograph_credit-0").fill("Dora Kemp");
  await page.locator("#photograph_licence-0").fill("CC-BY-4.0");
  await button(page, challenge.send).click();
  await page.waitForURL(/\/challenges\/[\w-]+\?said=challenge/);
  const said = page.locator("section[aria-labelledby=claimed]");
  expect(await said.textContent()).toContain("List of the stamps in use, 1871, leaf 4");
  const evidence = said.getByRole("img", { name: challenge.evidencePhotograph });
  await evidence.scrollIntoViewIfNeeded();
  await expect
    .poll(() => evidence.evaluate((image: HTMLImageElement) => image.naturalWidth))
    .toBeGreaterThan(0);
  return new URL(page.url()).pathname;
}

async function decide(page: Page, address: string, claim: string): Promise<void> {
  await page.goto(`${address}/moderation`);
  await page.locator(`a[href="${claim}"]`).click();
  await page.waitForURL(address + claim);
  await page.getByLabel(fields.ruling).selectOption("upheld in part");
  await page.getByLabel(fields.consequence).selectOption("new revision to review");
  await page.getByLabel(challenge.toReview).selectOption({ label: "revision 2" });
  await page
    .getByLabel(fields.reason)
    .fill("The list shows that the mark is younger than it was said to be, and nothing besides.");
  await button(page, challenge.decide).click();
  await page.waitForURL(/said=decide/);
  expect(await page.locator("section[aria-labelledby=decision]").textContent()).toContain(
    challenge.rulings["upheld in part"],
  );
  await page.context().close();
}

async function hearAppeal(
  page: Page,
  address: string,
  claim: string,
  choice: "let stand" | "overturn",
): Promise<void> {
  await page.goto(address + claim);
  await page.getByLabel(fields.choice).selectOption(choice);
  await page
    .getByLabel(fields.reason)
    .fill("I have read the list from the first leaf to the last, and weighed what both sides say.");
  await button(page, challenge.appealVoteSend).click();
  await page.waitForURL(/said=appeal-vote/);
  await page.context().close();
}

/** Waits until an entry's page says that it stands so: a review is open for some seconds at least. */
async function expectState(page: Page, address: string, entry: string, state: string): Promise<void> {
  await expect
    .poll(
      async () => {
        await page.goto(address + entry);
        return page.locator("#content header").first().textContent();
      },
      { timeout: 20_000, interval: 500 },
    )
    .toContain(state);
}

/** The history page says everything that happened, in order. */
async function expectStory(page: Page, address: string, entry: string): Promise<void> {
  await page.goto(address + entry);
  await page.getByRole("link", { name: entryReview.history, exact: true }).click();
  await page.waitForURL(/\/trail$/);
  const lines = (await page.locator("ol > li").allTextContents()).map((line) => line.replace(/\s+/g, " "));
  const told = [
    "Ida Corran recorded revision 1.",
    "Ida Corran put revision 1 forward",
    ...["Ada Holt", "Ben Arle", "Cleo Vann"].map((name) => `${name} voted for revision 1.`),
    "Revision 1 was verified, with 3 for, 0 against",
    "Dora Kemp challenged revision 1: wrong period.",
    "Ida Corran recorded revision 2.",
    "Ida Corran put revision 2 forward",
    "Mira Sole upheld the challenge (wrong period) in part.",
    "Dora Kemp appealed",
    "Nils Orde voted to let the decision stand.",
    "Olga Pell voted to overturn the decision.",
    "Per Quist voted to let the decision stand.",
    "the decision stands.",
    ...["Ada Holt", "Ben Arle", "Cleo Vann"].map((name) => `${name} voted for revision 2.`),
    "Revision 2 was verified, with 3 for, 0 against",
  ];
  expect(lines).toHaveLength(told.length);
  for (const [i, words] of told.entries()) expect(lines[i]).toContain(words);
}
