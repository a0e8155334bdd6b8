import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { overflowOf, violationsOf } from "../setup/accessibility.ts";
import { askForLookUp } from "../setup/ask-for-look-up.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { DEMO_MEMBERS, signInAs, signInPage } from "../setup/sign-in.ts";

const address = inject("appAddress");
const WIDTHS = [1280, 390, 320];
const THEMES = ["light", "dark"] as const;

/** Every page, by what is read there; the paths are known once something has been looked up. */
const PAGES = [
  "look up",
  "answer",
  "comparison",
  "entries",
  "entries with a period that can't be read",
  "entries past the last page",
  "no entries",
  "entry",
  "review",
  "history of an entry",
  "challenge, when it can't be",
  "review desk",
  "makers",
  "maker",
  "open questions",
  "about",
  "how sure is sure",
  "how sure is sure, of a model without a calibration",
  "refused look-up",
  "no such page",
  "sign in",
  "join",
  "members",
  "no members",
  "a member",
  "not allowed",
  "your account",
  "moderate members",
  "moderate a member",
  "contribute",
  "a draft",
  "preview of a draft",
  "begin a revision",
  "a revision",
  "difference of two revisions",
  "revisions of an entry",
  "a worksheet, empty",
  "a worksheet",
  "a worksheet whose address can't be read",
  "sizes",
  "sizes, compared",
  "decoders",
  "a wording, read",
  "a diamond, read either way",
  "a hallmark, read",
  "a number that is refused",
  "materials",
] as const;
/** Pages that are for somebody signed in, and who that is. */
const SIGNED_IN: Partial<Record<(typeof PAGES)[number], string>> = {
  "your account": "Ottoline Sarn",
  "moderate members": "Tamsel Orrowick",
  "moderate a member": "Wenda Thorsley",
  contribute: "Ottoline Sarn",
  "a draft": "Ottoline Sarn",
  "preview of a draft": "Ottoline Sarn",
  "begin a revision": "Ottoline Sarn",
};
let paths: Readonly<Record<(typeof PAGES)[number], string>>;
let browser: OpenedBrowser;

beforeAll(async () => {
  browser = await openBrowser();
  const { id, matches } = await askForLookUp(address);
  const entry = matches[0]?.entry.slug ?? "";
  const maker = matches.find(({ entry }) => entry.maker !== null)?.entry.maker?.slug ?? "";
  const draft = await beginDraft(entry);
  paths = {
    "look up": "/",
    answer: `/look-ups/${id}`,
    comparison: `/look-ups/${id}/compare/${entry}`,
    entries: "/entries",
    "entries with a period that can't be read": "/entries?period=soon",
    "entries past the last page": "/entries?page=999",
    "no entries": "/entries?words=xqzvw",
    entry: `/entries/${entry}`,
    review: `/entries/${entry}/review`,
    "history of an entry": `/entries/${entry}/trail`,
    "challenge, when it can't be": `/entries/${entry}/challenge`,
    "review desk": "/review",
    makers: "/makers",
    maker: `/makers/${maker}`,
    "open questions": "/questions",
    about: "/about",
    "how sure is sure": "/how-sure",
    "how sure is sure, of a model without a calibration": "/how-sure?model=marks@0.0.1",
    "refused look-up": "/look-up-refused?field=photograph&rule=image-type&received=text",
    "no such page": "/entries/there-is-no-such-entry",
    "sign in": "/sign-in",
    join: "/join",
    members: "/members",
    "no members": "/members?words=xqzvw",
    "a member": `/members/${DEMO_MEMBERS[0]?.id}`,
    "not allowed": "/not-allowed",
    "your account": "/account",
    "moderate members": "/moderation/members",
    "moderate a member": `/moderation/members?member=${DEMO_MEMBERS[1]?.id}`,
    contribute: "/contribute",
    "a draft": `/contribute/${draft}`,
    "preview of a draft": `/contribute/${draft}/preview`,
    "begin a revision": `/entries/${entry}/revise`,
    "a revision": `/entries/${entry}/revisions/1`,
    "difference of two revisions": `/entries/${entry}/difference?from=1&to=1`,
    "revisions of an entry": `/entries/${entry}/history`,
    "a worksheet, empty": "/dates",
    "a worksheet": "/dates?v=1&e=mk*k*1871%2F1890*950*p*A&e=st*s*1869*650&e=nu*k*1880*950",
    "a worksheet whose address can't be read": "/dates?v=1&y=9/3&e=xx*l*1890*950&e=mk*k*1871*950",
    sizes: "/dates/sizes",
    "sizes, compared": "/dates/sizes?sizes=17%2C+22%2C+28&unit=cm&height-standing=16&length=22&width=x",
    decoders: "/dates/decoders",
    "a wording, read": "/dates/decoders/wording?wording=D.R.G.M.+Made+in+Germany+EN71",
    "a diamond, read either way": "/dates/decoders/registration-diamond?top=K&right=5&left=R",
    "a hallmark, read": "/dates/decoders/hallmarks?office=Birmingham&letter=k&others=duty",
    "a number that is refused": "/dates/decoders/us-patents?number=99999999",
    materials: "/dates/decoders/materials?features=toy-nylon-plush",
  };
});
afterAll(() => browser.close());

/** A draft of the next revision of an entry, with all that the entry says. */
async function beginDraft(entry: string): Promise<string> {
  const form = new FormData();
  form.set("entry", entry);
  form.set("from", "1");
  const headers = { accept: "application/json", cookie: await signInAs(address, "Ottoline Sarn") };
  const answer = await fetch(`${address}/api/drafts`, { method: "POST", body: form, headers });
  return ((await answer.json()) as { id: string }).id;
}

describe.each(PAGES)("the page: %s", (name) => {
  it.each(THEMES)(
    "breaks no rule of WCAG 2.2 AA that axe-core knows, and fits its window, in the %s theme",
    async (theme) => {
      const page = await browser.newPage({ colorScheme: theme });
      const who = SIGNED_IN[name];
      if (who) await signInPage(page, address, who);
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 800 });
        await open(page, paths[name]);
        expect(await overflowOf(page), `${width} pixels wide`).toBeLessThanOrEqual(0);
        expect(await violationsOf(page), `${width} pixels wide`).toEqual([]);
      }
      await page.context().close();
    },
  );
});

it("would be told of a rule that is broken", async () => {
  const page = await browser.newPage();
  await open(page, "/about");
  await page.evaluate(() => document.documentElement.removeAttribute("lang"));
  expect((await violationsOf(page)).join()).toContain("html-has-lang");
  await page.context().close();
});

it("keeps the theme that was chosen, whatever the system says", async () => {
  const page = await browser.newPage({ colorScheme: "light" });
  await open(page, "/about");
  const light = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  await page.getByRole("radio", { name: messages.theme.dark, exact: true }).check();
  await page.reload();
  const dark = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  expect(dark).not.toBe(light);
  expect(await page.getByRole("radio", { name: messages.theme.dark, exact: true }).isChecked()).toBe(true);
  await page.context().close();
});

it("answers an address that leads nowhere with status 404", async () => {
  for (const path of ["/nowhere", "/entries/there-is-no-such-entry", "/makers/nobody", "/look-ups/0"])
    expect((await fetch(address + path)).status, path).toBe(404);
});

it("shows an error of the period at its field and keeps what was typed", async () => {
  const page = await browser.newPage();
  await open(page, paths["entries with a period that can't be read"]);
  const field = page.getByLabel(messages.browse.period);
  expect(await field.inputValue()).toBe("soon");
  expect(await field.getAttribute("aria-invalid")).toBe("true");
  const described = (await field.getAttribute("aria-describedby")) ?? "";
  expect(await page.locator(`#${described.split(" ")[0]}`).textContent()).toContain("soon");
  await page.context().close();
});

it("says of a page past the last how many there are, and leads to the last", async () => {
  const page = await browser.newPage();
  await open(page, paths["entries past the last page"]);
  await page.locator("#content").getByRole("link", { name: "Go to the last one" }).click();
  await page.getByRole("navigation", { name: messages.browse.paging }).waitFor();
  expect(await page.locator("#content ol > li").count()).toBeGreaterThan(0);
  await page.context().close();
});

it("says above the list what a search left out, and what may have been meant", async () => {
  const page = await browser.newPage();
  await open(page, "/entries?period=1890-1900");
  const found = page.locator("section[aria-labelledby=found]");
  expect(await found.textContent()).toContain(`${messages.fields.period} was left out`);
  await found.getByRole("link", { name: "1890/1900" }).click();
  await page.waitForURL((url) => url.searchParams.get("period") === "1890/1900");
  await page.context().close();
});

it("prints dark on light, whichever theme the screen has", async () => {
  for (const chosen of [messages.theme.dark, messages.theme.system]) {
    const page = await browser.newPage({ colorScheme: "dark" });
    await open(page, "/about");
    await page.getByRole("radio", { name: chosen, exact: true }).check();
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    expect(paper, chosen).toBe("rgb(255, 255, 255)");
    await page.context().close();
  }
});

it("tells nothing that an address makes up of a refusal", async () => {
  const page = await browser.newPage();
  await open(page, "/look-up-refused?field=photograph&rule=Your+account+is+closed");
  expect(new URL(page.url()).pathname).toBe("/");
  await page.context().close();
});

it("fits its window however long a word was searched for", async () => {
  const page = await browser.newPage({ viewport: { width: 390, height: 800 } });
  for (const path of ["/entries?words=", "/makers?words=", "/entries?material="]) {
    await open(page, path + "x".repeat(3000));
    expect(await overflowOf(page), path).toBeLessThanOrEqual(0);
  }
  await page.context().close();
});

/** Opens a page; one that is missing on purpose is let through as if it were found, so that its 404 is no complaint. */
async function open(page: Page, path: string): Promise<void> {
  await page.unrouteAll();
  await page.route("**/entries/there-is-no-such-entry", async (route) => {
    await route.fulfill({ response: await route.fetch(), status: 200 });
  });
  await page.goto(address + path, { waitUntil: "load" });
  await page.getByRole("heading", { level: 1 }).waitFor();
}
