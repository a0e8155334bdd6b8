import type { Page } from "playwright-core";
import messages from "../../messages/en.json" with { type: "json" };

const { fields, review } = messages;

/** Votes on the review that is open in a browser. @param choice as the form names it */
export async function vote(page: Page, choice: string, reason: string): Promise<void> {
  await cast(page, choice, reason);
  await page.waitForURL(/said=vote/);
}

export async function cast(page: Page, choice: string, reason: string): Promise<void> {
  await page.getByLabel(choice).check();
  await page.getByLabel(fields.basis).selectOption("compared photographs");
  await page.getByLabel(fields.reason, { exact: true }).fill(reason);
  await page.getByRole("button", { name: review.vote, exact: true }).click();
  const now = page.getByRole("button", { name: review.sendNow, exact: true });
  if (await now.isVisible().catch(() => false)) await now.click();
}
