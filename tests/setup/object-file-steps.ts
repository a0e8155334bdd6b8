import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import messages from "../../messages/en.json" with { type: "json" };

const words = messages.objectPages;
const DEMO = fileURLToPath(new URL("../../seed/demo/objects", import.meta.url));

/** A phone held upright, with a finger for a pointer. */
export const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;

/** A photograph as a browser hands it over. */
export const photograph = (name: string, buffer: Buffer) => ({ name, mimeType: "image/jpeg", buffer });

/** One of the pictures of the demo's boat: its sides, marks and papers. */
export const picture = (name: string) => ({
  name: `${name}.webp`,
  mimeType: "image/webp",
  buffer: readFileSync(join(DEMO, `${name}.webp`)),
});

/** Opens a new file by its form. @returns its path */
export async function openFile(page: Page, address: string, title: string): Promise<string> {
  await page.goto(`${address}/objects/new`);
  await page.getByLabel(words.fields.title).fill(title);
  await page.getByLabel(words.fields.family).selectOption("tin and wooden toys");
  await page.getByRole("button", { name: words.openIt }).click();
  await page.waitForURL(/\/objects\/[\w-]{20,}$/);
  return new URL(page.url()).pathname;
}

/** Until the page that a kept form leads to is there. */
export const said = (page: Page): Promise<void> => page.waitForURL(/said=saved/);

/** Fills in the last form of a kind on a part of the file, opened first where it lies folded, and keeps it. */
export async function fillIn(
  page: Page,
  at: string,
  { form: kind, open, image, fields }: FormToFill,
): Promise<void> {
  await page.goto(at);
  const form = page.locator(`form[action$="/${kind}"]`).last();
  if (open !== undefined && !(await form.isVisible())) await page.getByText(open, { exact: true }).click();
  for (const [name, value] of Object.entries(fields)) {
    const field = form.locator(`[name="${name}"]`);
    if ((await field.evaluate((each) => each.tagName)) === "SELECT") await field.selectOption(value);
    else await field.fill(value);
  }
  if (image) await form.locator('[name="photograph"]').last().setInputFiles(image);
  await form.getByRole("button", { name: words.save }).click();
}

type FormToFill = {
  /** Last part of the address that it is sent to. */
  readonly form: string;
  /** Words of the fold that it may lie in. */
  readonly open?: string;
  readonly image?: ReturnType<typeof picture>;
  readonly fields: Readonly<Record<string, string>>;
};

/** Ids of the versions that a file's history shows. */
export async function versionsOf(page: Page, at: string): Promise<readonly string[]> {
  const answer = await page.context().request.get(`${at}/history`);
  return [...new Set((await answer.text()).match(/id="version-\d+"/g) ?? [])];
}
