import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import type { DemoMember } from "#core/members/demo-member";

/** The demo's ready accounts. */
export const DEMO_MEMBERS: readonly DemoMember[] = JSON.parse(
  readFileSync(fileURLToPath(new URL("../../seed/members.json", import.meta.url)), "utf8"),
);

/**
 * Signs in as one of the demo's members.
 * @param who name or id
 * @returns the value of the header `cookie`
 */
export async function signInAs(address: string, who: string): Promise<string> {
  const member = DEMO_MEMBERS.find(({ id, name }) => id === who || name === who);
  if (!member) throw new Error(`No member of the demo has that name or id. Received "${who}".`);
  const form = new FormData();
  form.set("member", member.id);
  const headers = { accept: "application/json" };
  const answer = await fetch(`${address}/api/sign-in/demo`, { method: "POST", body: form, headers });
  if (!answer.ok) throw new Error(`${who} was not signed in: ${await answer.text()}`);
  return cookieOf(answer);
}

/** What a browser would send back of the cookies that an answer sets. */
export const cookieOf = (answer: Response): string =>
  answer.headers
    .getSetCookie()
    .map((set) => set.split(";")[0])
    .join("; ");

/** Signs a browser in as one of the demo's members. */
export async function signInPage(page: Page, address: string, who: string): Promise<void> {
  await takeCookie(page, address, await signInAs(address, who));
}

/** Lets a browser be whoever a cookie says. @param cookie the value of the header `cookie` */
export async function takeCookie(page: Page, address: string, cookie: string): Promise<void> {
  const pairs = cookie.split("; ").map((pair) => {
    const [, name = "", value = ""] = /^([^=]+)=(.*)$/.exec(pair) ?? [];
    return { name, value, url: address };
  });
  await page.context().addCookies(pairs);
}
