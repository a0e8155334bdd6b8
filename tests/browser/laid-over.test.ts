import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { overflowOf, violationsOf } from "../setup/accessibility.ts";
import { askForLookUp } from "../setup/ask-for-look-up.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";

const address = inject("appAddress");
const { compare } = messages;
const MARK = "brandreth-sons-schooner";
let browser: OpenedBrowser;
let id: string;
let another: string | undefined;

beforeAll(async () => {
  browser = await openBrowser();
  const lookUp = await askForLookUp(address, MARK);
  id = lookUp.id;
  another = lookUp.matches.find(({ entry }) => !entry.slug.startsWith("brandreth"))?.entry.slug;
});
afterAll(() => browser.close());

it.each([1280, 390])(
  "lays one's own over the entry's and says how many points agree, %d wide",
  async (width) => {
    const page = await laidOver(MARK, width);
    await page
      .getByRole("status")
      .getByText(/^\d+ points agree/)
      .waitFor();
    const count = Number.parseInt((await page.getByText(/^\d+ points agree/).textContent()) ?? "", 10);
    expect(count).toBeGreaterThanOrEqual(16);

    const over = page.getByAltText(compare.altLaid);
    expect(await over.evaluate((each) => getComputedStyle(each).transform)).toContain("matrix3d");
    const slider = page.getByRole("slider", { name: compare.opacity });
    await slider.focus();
    await page.keyboard.press("End");
    expect(await over.evaluate((each) => getComputedStyle(each).opacity)).toBe("1");
    await page.keyboard.press("Home");
    expect(await over.evaluate((each) => getComputedStyle(each).opacity)).toBe("0");

    expect(await page.locator("figure svg g").count()).toBe(0);
    await page.getByRole("checkbox", { name: compare.points }).check();
    expect(await page.locator("figure:first-child svg g").count()).toBe(count);
    expect(await violationsOf(page)).toEqual([]);
    expect(await overflowOf(page)).toBe(0);
    await page.getByRole("radio", { name: compare.mode.side }).check();
    expect(await page.locator("figure svg g").count()).toBe(2 * count);
    await page.context().close();
  },
);

it("puts the middle of one's own mark onto the middle of the entry's", async () => {
  const page = await laidOver(MARK, 1280);
  await page
    .getByRole("status")
    .getByText(/points agree/)
    .waitFor();
  await page.getByRole("checkbox", { name: compare.points }).check();
  // A ring's place on the screen, and the same point of one's own as the browser warps it.
  const apart = await page.evaluate(
    async ({ question, alt }) => {
      const { points } = await (await fetch(question)).json();
      const image = [...document.querySelectorAll("img")].find((each) => each.alt === alt);
      if (!image?.parentElement) throw new Error("nothing is laid over");
      const matrix = new DOMMatrix(getComputedStyle(image).transform);
      const rings = image.closest("figure")?.querySelector("svg");
      const region = rings?.viewBox.baseVal;
      if (!region) throw new Error("no rings are drawn");
      const scale = image.parentElement.offsetWidth / region.width;
      const distances = points.map(
        ({ query, reference }: { query: [number, number]; reference: [number, number] }) => {
          const { x, y, w } = matrix.transformPoint(new DOMPoint(...query));
          return Math.hypot(
            x / w - (reference[0] - region.x) * scale,
            y / w - (reference[1] - region.y) * scale,
          );
        },
      );
      return distances.sort((a: number, b: number) => a - b)[Math.floor(distances.length / 2)];
    },
    { question: await asked(page), alt: compare.altLaid },
  );
  expect(apart).toBeLessThan(3);
  await page.context().close();
});

it("says so when they can't be laid over each other, and shows them side by side", async () => {
  if (!another) throw new Error("The look-up found one maker only.");
  const page = await laidOver(another, 390);
  await page.getByRole("status").getByText(compare.laidNone).waitFor();
  await page.getByAltText(compare.altQuery).waitFor();
  expect(await page.getByAltText(compare.altLaid).count()).toBe(0);
  expect(await page.getByRole("checkbox", { name: compare.points }).count()).toBe(0);
  await page.context().close();
});

it("can be asked again when the host does not answer", async () => {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  let refused = 0;
  await page.route(/\/alignment\?/, (route) =>
    refused++ === 0 ? route.fulfill({ status: 204, body: "" }) : route.continue(),
  );
  await page.goto(`${address}/look-ups/${id}/compare/${MARK}`, { waitUntil: "load" });
  await page.getByRole("radio", { name: compare.mode.laid }).check();
  await page.getByRole("status").getByText(compare.laidFailed).waitFor();
  await page.getByRole("button", { name: compare.laidAgain }).click();
  await page
    .getByRole("status")
    .getByText(/points agree/)
    .waitFor();
  await page.context().close();
});

async function laidOver(slug: string, width: number): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 900 } });
  await page.goto(`${address}/look-ups/${id}/compare/${slug}`, { waitUntil: "load" });
  await page.getByRole("radio", { name: compare.mode.laid }).check();
  return page;
}

/** The address that the page asked for the alignment. */
async function asked(page: Page): Promise<string> {
  return page.evaluate(
    () =>
      performance
        .getEntriesByType("resource")
        .map(({ name }) => name)
        .find((name) => name.includes("/alignment?")) ?? "",
  );
}
