import type { Page } from "playwright-core";
import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { overflowOf, violationsOf } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { fillIn, openFile, PHONE, picture, said } from "../setup/object-file-steps.ts";
import { DEMO_MEMBERS, signInPage } from "../setup/sign-in.ts";

const address = inject("appAddress");
const words = messages.objectPages;
const owner = DEMO_MEMBERS[1];
if (!owner) throw new Error("The demo must have two members.");
const PARTS = ["examine", "measure", "marks", "provenance", "condition", "finding", "share", "history"];

/*
 * The steamer of the demo, by another member and by hand. Brandreth Sons printed the ship on it from 1914 to 1927: on
 * the deck, and again under the hull. Petherick's label at the stern was in use from 1932 on. A bill of 1924, a page of
 * an album of 1925, and a letter of 1979 that tells of Christmas 1913. It is 245 mm long, between two catalogued sizes.
 */
describe("a clockwork tin boat from an attic, on a phone", () => {
  let browser: OpenedBrowser;
  let page: Page;
  let file = "";
  beforeAll(async () => {
    browser = await openBrowser();
    page = await browser.newPage(PHONE);
    await signInPage(page, address, owner.id);
    file = address + (await openFile(page, address, "Steamer from the attic"));
  });
  afterAll(() => browser.close());

  const mark = async (photo: string, place: string, kind: string, technique: string, belongs: string) => {
    const fields = { kind, technique, place, belongs, words: `${photo}, as it stands` };
    await fillIn(page, `${file}/marks`, { form: "mark", image: picture(photo), fields });
    await said(page);
  };
  const document = async (
    kind: string,
    title: string,
    when: string,
    photo: string,
    transcription: string,
  ) => {
    const fields = { kind, title, when, transcription };
    const open = words.chain.addDocument;
    await fillIn(page, `${file}/provenance`, { form: "document", open, image: picture(photo), fields });
    await said(page);
    await page.getByRole("img", { name: `Scan of ${title}` }).waitFor({ state: "attached" });
  };
  const step = async (fields: Readonly<Record<string, string>>, behind: string) => {
    await page.goto(`${file}/provenance`);
    const form = page.locator('form[action$="/event"]').last();
    if (!(await form.isVisible())) await page.getByText(words.chain.add, { exact: true }).click();
    for (const [name, value] of Object.entries(fields)) {
      const field = form.locator(`[name="${name}"]`);
      if (name === "kind" || name === "passage") await field.selectOption(value);
      else await field.fill(value);
    }
    await form.getByRole("checkbox", { name: new RegExp(behind) }).check();
    await form.getByRole("button", { name: words.save }).click();
    await said(page);
  };

  it("is photographed, and examined from point to point", async () => {
    await page.goto(file);
    await page.locator('input[name="photograph"]').last().setInputFiles(picture("port-side"));
    await page.getByLabel(words.overview.shows).fill("The port side with a rule");
    await page.getByRole("button", { name: words.overview.addPhotograph }).click();
    await said(page);
    await page.getByRole("img", { name: "The port side with a rule" }).waitFor();
    await page.getByRole("link", { name: words.overview.begin }).click();
    const point = page.locator("form h2");
    const first = await point.textContent();
    await page.getByLabel(words.examine.observed.seen).check();
    await page.locator("#option").selectOption("litho");
    await page.getByRole("button", { name: words.examine.saveNext }).click();
    await expect.poll(() => point.textContent()).not.toBe(first);
    await page.getByLabel(words.examine.observed.absent).check();
    await page.getByRole("button", { name: words.examine.saveNext }).click();
    await page.getByText("All 14 points; 12 to go").waitFor();
    await page.waitForLoadState("networkidle");
  });

  it("is measured by a rule, and on the photograph, where the computer works out how far off it may be", async () => {
    const fields = { measured: "height-standing", amount: "16.6 cm", within: "2 mm" };
    await fillIn(page, `${file}/measure`, { form: "measurement", fields });
    await said(page);
    await page.locator('a[href*="?on="]').first().click();
    await page.waitForLoadState("networkidle");
    const screen = page.locator('form[action$="/measure-on-screen"]');
    const scale = {
      scale_x1: 210,
      scale_y1: 1041,
      scale_x2: 710,
      scale_y2: 1041,
      scale_mm: 100,
      point_within: 2,
    };
    const hull = { object_x1: 188, object_y1: 690, object_x2: 1412, object_y2: 640 };
    for (const [name, at] of Object.entries({ ...scale, ...hull }))
      await screen.locator(`[name="${name}"]`).fill(String(at));
    // By keys: one down.
    const end = new RegExp(`^${words.measure.points["object-b"]}`);
    await screen.getByRole("button", { name: end }).press("ArrowDown");
    expect(await screen.locator('[name="object_y2"]').inputValue()).toBe("641");
    await screen.getByText("C to D: 245 mm").waitFor();
    await screen.locator('[name="measured"]').selectOption("length");
    await screen.getByRole("button", { name: words.save }).click();
    await said(page);
    await page.getByText("Length: 245 mm, within 1.5 mm").first().waitFor();
  });

  it("is of an ambiguous size: the smallest by height, none by length", async () => {
    const fields = { name: "Harbour steamers", when: "1914 to 1927", sizes: "17, 22, 28" };
    await fillIn(page, `${file}/measure`, { form: "line", fields });
    await said(page);
    await page.getByText(messages.sizesPage.verdicts["conventions-disagree"]).waitFor();
    await page.getByText("If the catalogue gives the height standing: size 17 cm").waitFor();
    await page.getByText("If the catalogue gives the length: none of its sizes").waitFor();
  });

  it("has its marks looked up from inside the file, each match pinned to its revision and model", async () => {
    await mark("deck", "deck, behind the funnel", "mark", "printed", "from the first");
    await mark("hull", "underside of the hull", "mark", "printed", "not known");
    await mark("stern", "stern", "label", "paper", "added later");
    for (const [n, entry] of ["Schooner in a ring", "Schooner in a ring", "Round label"].entries()) {
      const item = page
        .locator("main li")
        .filter({ has: page.locator(`form[action$="/look-up"]`) })
        .nth(n);
      await item.getByRole("button", { name: words.match.lookUp, exact: true }).click();
      await page.waitForURL(/lookUp=/);
      const accept = page.getByRole("button", { name: words.match.accept });
      const found = page.locator("section", { has: accept }).last();
      await found.getByText(/^\d+ % that no entry shows this mark\.$/).waitFor();
      const percent = Number(/(\d+) %/.exec((await found.locator("li").first().textContent()) ?? "")?.[1]);
      const filled = await accept.evaluateAll((all) =>
        all.map((each) => getComputedStyle(each).backgroundColor !== "rgba(0, 0, 0, 0)"),
      );
      // A likely first candidate alone has the button that asks to be pressed.
      expect(filled, `${percent} %`).toEqual(filled.map((_, place) => place === 0 && percent >= 60));
      expect(filled.length).toBeGreaterThan(1);
      await accept.first().click();
      await said(page);
      await item.getByRole("link", { name: new RegExp(entry) }).waitFor();
    }
    expect(await page.getByText(/Revision \d+/).count()).toBe(3);
    expect(await page.getByText(/Found by marks 3\.0\.0/).count()).toBe(3);
  });

  it("has what came with it, and a chain of what happened", async () => {
    await document(
      "receipt",
      "Bill of the bazaar",
      "19 December 1924",
      "receipt",
      "1 clockwork steamer, 14/6",
    );
    await document("album page", "Page of an album", "1925", "album-page", "Jonas with the Thistledown");
    const letter = "Jonas had it for Christmas 1913, and sailed it until the spring broke. ".repeat(360);
    await document("letter", "Letter of a grandchild", "11 February 1979", "letter", letter.trim());
    await step(
      { kind: "given", when: "Christmas 1913", to: "Jonas Trell", told: "For Christmas 1913." },
      "Letter",
    );
    await step(
      { kind: "sold", when: "19 December 1924", from: "The bazaar", to: "Edda Trell", told: "" },
      "Bill",
    );
    await step({ kind: "photographed", when: "1925", to: "Edda Trell", told: "At the pond." }, "Page");
    const inherited = {
      kind: "inherited",
      when: "1979",
      from: "Edda Trell",
      to: "Mara Osk",
      passage: "by descent to",
    };
    await step(inherited, "Letter");
    await page.getByText(/^Jonas Trell had it .* before it could have been made/).waitFor();
    await page.getByText(/by descent to Mara Osk/).waitFor();
  });

  it("shows the contradiction, the doubled mark with explanations that compete, and the label too young", async () => {
    await page.goto(`${file}/finding`);
    await page.getByText(/^Two marks of Brandreth Sons stand on it/).waitFor();
    await page.getByText(/^The label \(stern\) was not in use before/).waitFor();
    await page.getByText(/^It cannot have been with Jonas Trell/).waitFor();
    const { explanation } = messages.objects;
    for (const id of [
      "pattern-room-master",
      "repair-with-second-mark",
      "assembled-from-two",
      "later-forgery",
      "factory-error",
    ] as const)
      await page.getByRole("heading", { name: explanation[id], exact: true }).first().waitFor();
    // Nothing is picked until somebody weighs it.
    expect(await page.getByText(words.finding.notWeighed).count()).toBeGreaterThan(10);
    const habit = page
      .locator("li")
      .filter({ has: page.getByRole("heading", { name: explanation["factory-habit"] }) })
      .last();
    await habit.getByText(words.finding.weigh).click();
    await habit.locator('[name="weight"]').selectOption("possible");
    await habit.locator('[name="reason"]').fill("No other steamer was turned over yet.");
    await habit.getByRole("button", { name: words.save }).click();
    await said(page);
    await page.getByText("No other steamer was turned over yet.").first().waitFor();
  });

  it("has a computed date and a finding in careful words; one that names nobody is refused, with what was typed", async () => {
    await fillIn(page, `${file}/condition`, {
      form: "condition",
      fields: { condition: "flaking", extent: "moderate" },
    });
    await said(page);
    await page.goto(`${file}/finding`);
    await page.getByText(/^Probably made 192\d to 192\d/).waitFor();
    await page
      .getByText(/not after 19 December 1924/)
      .first()
      .waitFor();
    const finding = page.locator('form[action$="/finding"]');
    // Whose mark was found is offered as a beginning.
    expect(await finding.locator('[name="maker"]').inputValue()).toBe("Brandreth Sons");
    await finding.locator('[name="maker"]').fill("");
    await finding.locator('[name="rung"]').selectOption("by");
    await finding.locator('[name="says"]').fill("A steamer of the harbour line.");
    await finding.getByRole("button", { name: words.finding.state }).click();
    await finding.locator('[role="alert"]').first().waitFor();
    browser.forgive(/422/);
    expect(await finding.locator('[name="says"]').inputValue()).toBe("A steamer of the harbour line.");
    await finding.locator('[name="maker"]').fill("Brandreth Sons");
    await finding.locator('[name="rung"]').selectOption("marked by");
    await finding.getByRole("button", { name: words.finding.state }).click();
    await said(page);
    await page.goto(file);
    await page.getByText("Marked by Brandreth Sons").waitFor();
    const order = await page.locator("main h2").allTextContents();
    const { sure, why, against, who } = words.overview;
    const asked = [sure, why, against, who];
    expect(order.filter((each) => asked.includes(each))).toEqual(asked);
  });

  it("fits a phone on every page, with no fault of accessibility", async () => {
    for (const part of ["", ...PARTS.map((each) => `/${each}`)]) {
      await page.goto(file + part);
      expect([part, await overflowOf(page)]).toEqual([part, 0]);
      expect([part, await violationsOf(page)]).toEqual([part, []]);
    }
  }, 60_000);

  it("is handed over as a PDF of 2 to 8 pages, whose text says all of it", async () => {
    for (const paper of ["a4", "letter"]) {
      const answer = await page.context().request.get(`${file}/report.pdf?paper=${paper}`);
      expect(answer.status()).toBe(200);
      const pdf = await getDocumentProxy(new Uint8Array(await answer.body()));
      expect(pdf.numPages).toBeGreaterThanOrEqual(2);
      expect(pdf.numPages).toBeLessThanOrEqual(8);
      const text = (await extractText(pdf, { mergePages: true })).text.replaceAll(/\s+/g, " ");
      const { explanation } = messages.objects;
      for (const sentence of [
        "Steamer from the attic",
        "Marked by Brandreth Sons",
        "Jonas Trell had it",
        "Two marks of Brandreth Sons stand on it",
        explanation["pattern-room-master"],
        explanation["later-forgery"],
        "No other steamer was turned over yet.",
        "245 mm",
        "Schooner in a ring",
        "not a valuation",
        "marks 3.0.0",
      ])
        expect(text).toContain(sentence);
      expect(text).toMatch(/192\d to 192\d/);
      expect(text).toMatch(/[0-9a-f]{12,64}/);
    }
  }, 30_000);
}, 120_000);
