import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { expect } from "vitest";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
/** WCAG 2.2 AA, as axe-core names its parts. */
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

type Violation = {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string }[];
};
declare const window: { axe: { run(options: object): Promise<{ violations: Violation[] }> } };

/** What axe-core finds against a page, each as a line: the rule, what it asks, and where it is broken. */
export async function violationsOf(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  const violations = await page.evaluate(
    async (values) => (await window.axe.run({ runOnly: { type: "tag", values } })).violations,
    TAGS,
  );
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html).join(" | ")}`,
  );
}

/** Pixels by which a page is wider than its window. */
export async function overflowOf(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

const WIDTHS = [1280, 390, 320];

/** The page as it stands breaks no rule and fits its window. @param name of the page, for whoever reads the failure */
export async function checkLooks(page: Page, name: string): Promise<void> {
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 800 });
    expect(await overflowOf(page), `${name}, ${width} pixels wide`).toBeLessThanOrEqual(0);
    expect(await violationsOf(page), `${name}, ${width} pixels wide`).toEqual([]);
  }
  await page.setViewportSize({ width: 1280, height: 800 });
}
