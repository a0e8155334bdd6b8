import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { checkLooks } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { signInPage } from "../setup/sign-in.ts";

const address = inject("appAddress");
const { account, accountMenu, fields, join, members, notAllowed, signIn, standing } = messages;
const PASSWORD = "a pewter flagon, 1803";
/** So that a host that is tested twice has not met them. */
const run = Date.now().toString(36);
let browser: OpenedBrowser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each([
  ["with scripts", true],
  ["without scripts", false],
])("a member, %s", (title, javaScriptEnabled) => {
  it("joins, declares an interest, ends it, signs out and in again, and goes on where they were", async () => {
    const page = await browser.newPage({ javaScriptEnabled });
    const email = `member-${title.replace(" ", "-")}-${run}@example.org`;
    await page.goto(address);
    await page.getByRole("link", { name: accountMenu.signIn }).click();
    await page.waitForURL(/\/sign-in/);
    await page.locator("#content").getByRole("link", { name: "Join" }).click();
    await page.waitForURL(/\/join/);
    await page.getByLabel(fields.name).fill("Ida Corran");
    await page.getByLabel(fields.email).fill(email);
    await page.getByLabel(fields.password).fill("too short");
    await page.getByRole("button", { name: join.go }).click();
    await page.waitForURL(/form=/);
    expect(await page.getByLabel(fields.name).inputValue()).toBe("Ida Corran");
    expect(await page.getByLabel(fields.password).inputValue()).toBe("");
    expect(await page.locator("#password-error").textContent()).toContain("at least 12 signs");
    await page.locator("#password:focus").waitFor({ timeout: 5000 });
    await page.getByLabel(fields.password).fill(PASSWORD);
    await page.getByRole("button", { name: join.go }).click();
    await page.waitForURL(/\/account\?said=joined/);

    await page.getByLabel(fields.maker).selectOption({ label: "Tobias Bodkin" });
    await page.getByRole("button", { name: account.declare }).click();
    await page.waitForURL(/form=/);
    await page.locator("#stake:focus").waitFor({ timeout: 5000 });
    await page.getByLabel(fields.stake).selectOption("collection");
    await page.getByLabel(fields.note).fill("Two flagons.");
    await page.getByRole("button", { name: account.declare }).click();
    await page.waitForURL(/said=declare/);
    await page.getByRole("link", { name: account.shown }).click();
    await page.waitForURL(/\/members\//);
    const shown = page.locator("section[aria-labelledby=interests]");
    expect(await shown.textContent()).toContain("Two flagons.");
    expect(await page.locator("#content").textContent()).not.toContain("@");
    await page.goBack();
    await page.getByRole("button", { name: "This is over: Tobias Bodkin" }).click();
    await page.waitForURL(/said=end-interest/);
    expect(await page.locator("section[aria-labelledby=interests] li").first().textContent()).toContain(
      ", over",
    );

    await page.getByRole("button", { name: accountMenu.signOut }).click();
    await page.waitForURL(/said=signed-out/);
    await page.goto(`${address}/account`);
    await page.waitForURL(/\/sign-in\?next=%2Faccount/);
    await page.getByLabel(fields.email).fill(email);
    await page.getByLabel(fields.password).fill("not the password");
    await page.getByRole("button", { name: signIn.go, exact: true }).click();
    await page.waitForURL(/form=/);
    expect(await page.getByLabel(fields.email).inputValue()).toBe(email);
    await page.getByLabel(fields.password).fill(PASSWORD);
    await page.getByRole("button", { name: signIn.go, exact: true }).click();
    await page.waitForURL(`${address}/account`);
    await page.context().close();
  });
});

it("signs in as one of the demo's members by one press, and shows each role what it may do", async () => {
  const page = await browser.newPage();
  await page.goto(`${address}/sign-in`);
  await page.getByRole("button", { name: "Sign in as Jory Amblett" }).click();
  await page.waitForURL(`${address}/`);
  expect(await page.getByRole("link", { name: accountMenu.moderation }).count()).toBe(0);
  await page.goto(`${address}/moderation/members`);
  await page.getByRole("heading", { level: 1, name: notAllowed.title }).waitFor();
  expect(await page.getByRole("alert").first().textContent()).toContain("contributor");
  browser.forgive(/403/);
  await page.context().close();
});

it("is appointed and suspended by a moderator with a reason, and it stays on record", async () => {
  const [page, theirs] = [await browser.newPage(), await browser.newPage()];
  const name = `Bram Tiller ${run}`;
  await theirs.goto(`${address}/join`);
  await theirs.getByLabel(fields.name).fill(name);
  await theirs.getByLabel(fields.email).fill(`bram-${run}@example.org`);
  await theirs.getByLabel(fields.password).fill(PASSWORD);
  await theirs.getByRole("button", { name: join.go }).click();
  await theirs.waitForURL(/\/account/);

  await signInPage(page, address, "Tamsel Orrowick");
  await page.goto(`${address}/moderation/members`);
  await page.getByLabel(members.words).fill(run);
  await page.getByRole("button", { name: members.search, exact: true }).click();
  await page.waitForURL(/words=/);
  await page.getByRole("link", { name }).first().click();
  await page.waitForURL(/member=/);
  const form = page.locator("section[aria-labelledby=act-reviewer]");
  await form.getByLabel("toys").check();
  await form.getByLabel(fields.reason).fill("Knows toys.");
  await form.getByRole("button", { name: standing.reviewer }).click();
  await page.waitForURL(/form=/);
  expect(await form.getByLabel("toys").isChecked()).toBe(true);
  expect(await form.getByLabel(fields.reason).inputValue()).toBe("Knows toys.");
  await checkLooks(page, "/moderation/members");
  await form.getByLabel(fields.reason).fill("Wrote the book on clockwork toys.");
  await form.getByRole("button", { name: standing.reviewer }).click();
  await page.waitForURL(/said=reviewer/);
  expect(await page.locator("section[aria-labelledby=acts]").textContent()).toContain("Wrote the book");
  await theirs.reload();
  expect(await theirs.locator("#content header").first().textContent()).toContain("reviewer");

  const suspend = page.locator("section[aria-labelledby=act-suspend]");
  await suspend.getByLabel(fields.reason).fill("Sent one claim forty times.");
  await suspend.getByRole("button", { name: standing.suspend }).click();
  await page.waitForURL(/said=suspend/);
  await theirs.reload();
  await theirs.waitForURL(/\/sign-in/);
  await page.context().close();
  await theirs.context().close();
});
