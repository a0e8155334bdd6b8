import type { Page } from "playwright-core";
import messages from "../../messages/en.json" with { type: "json" };

const words = messages.contribute;

export const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });

/** Begins a new entry. @returns the address of its draft */
export async function begin(page: Page, address: string): Promise<string> {
  await page.goto(`${address}/contribute`);
  await page.getByRole("button", { name: words.new }).click();
  await page.waitForURL(/\/contribute\/[\w-]{20,}/);
  return page.url();
}

/** Begins a revision of an entry. @returns the address of its draft */
export async function beginRevision(page: Page, address: string, slug: string, from = ""): Promise<string> {
  await page.goto(`${address}/entries/${slug}/revise${from}`);
  await page.getByRole("button", { name: words.reviseBegin }).click();
  await page.waitForURL(/\/contribute\/[\w-]{20,}/);
  return page.url();
}

export async function describeMark(page: Page, title: string): Promise<void> {
  await page.locator("#title").fill(title);
  await page.locator("#kind").selectOption("mark");
  await page.locator("#field").selectOption("metalwork");
  await page.locator("#description").fill("Struck twice under the handle, the second time upside down.");
}

export async function tellOfPhotographs(page: Page): Promise<void> {
  const parts = page.locator('fieldset[id^="photograph-"]');
  for (let i = 0; i < (await parts.count()); i++) {
    await parts.nth(i).locator('input[name$="-credit"]').fill("Ansa Hollin");
    await parts.nth(i).locator('input[name$="-licence"]').fill("CC-BY-4.0");
    await parts
      .nth(i)
      .locator('input[name$="-impression"]')
      .fill(String(i + 1));
  }
}
