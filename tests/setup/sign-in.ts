import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
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
  return answer.headers
    .getSetCookie()
    .map((set) => set.split(";")[0])
    .join("; ");
}
