import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import type { Field } from "#core/entries/vocabulary";
import { cookieOf } from "./sign-in.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const PASSWORD = "a pewter flagon, 1803";
let clients = 0;

/** A member who joined for a test, and is signed in. */
export type Joined = {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  /** The value of the header `cookie`. */
  readonly cookie: string;
};

/** Joins a host as people do, by its form; each from an address of their own, since joining is counted by client. */
export async function joinAs(address: string, name: string): Promise<Joined> {
  const email = `${crypto.randomUUID()}@example.org`;
  const answer = await fetch(`${address}/api/join`, {
    method: "POST",
    body: formOf({ name, email, password: PASSWORD }),
    headers: { accept: "application/json", "x-forwarded-for": clientAddress() },
  });
  const text = await answer.text();
  if (!answer.ok) throw new Error(`${name} could not join: ${text}`);
  return { id: JSON.parse(text).id, name, email, cookie: cookieOf(answer) };
}

/** An address of a client that no other test has, for the header `x-forwarded-for`. */
export const clientAddress = (): string => `2001:db8:${(process.pid % 65_536).toString(16)}:${++clients}::1`;

/** Lets who runs a host appoint an administrator, by the command. @param env says which host */
export async function appointAdministrator(
  env: Readonly<Record<string, string>>,
  email: string,
): Promise<void> {
  await runProgram(env, "scripts/appoint.ts", "--email", email, "--role", "administrator");
}

/** Runs a program for the operator, such as `npm run` would. @returns what it printed */
export async function runProgram(
  env: Readonly<Record<string, string>>,
  ...words: readonly string[]
): Promise<string> {
  const { DATABASE_URL: _, ...rest } = process.env;
  const run = promisify(execFile);
  const tsx = ["node_modules/tsx/dist/cli.mjs", ...words];
  return (await run(process.execPath, tsx, { cwd: root, env: { ...rest, ...env } })).stdout;
}

/** Has an administrator appoint members: reviewers in a field, moderators where there is none. */
export async function appoint(
  address: string,
  by: Joined,
  whom: Joined,
  as: Field | "moderator",
): Promise<void> {
  const role = as === "moderator" ? "moderator" : "reviewer";
  const standing = as === "moderator" ? { moderator: "yes" } : { [`field ${as}`]: "yes" };
  const answer = await fetch(`${address}/api/members/${whom.id}/${role}`, {
    method: "POST",
    body: formOf({ ...standing, reason: "Known to the society for many years." }),
    headers: { accept: "application/json", cookie: by.cookie },
  });
  if (!answer.ok) throw new Error(`${whom.name} was not appointed: ${await answer.text()}`);
}

function formOf(fields: Readonly<Record<string, string>>): FormData {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  return form;
}
