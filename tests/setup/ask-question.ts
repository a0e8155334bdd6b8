import type { FieldError } from "#core/field-error";
import type { LookUpView } from "#core/look-ups/look-up";
import { nameToTry } from "./ask-for-look-up.ts";
import { photographsToTry } from "./photographs-to-try.ts";

/** Somebody with cookies of their own, who talks to the app without a browser. */
export type Client = {
  send(
    path: string,
    fields: Readonly<Record<string, string>>,
    headers?: Readonly<Record<string, string>>,
  ): Promise<Response>;
  get(path: string): Promise<Response>;
};

/** @param from the address that a proxy would name; limits count by it */
export function newClient(address: string, from: string): Client {
  const cookies = new Map<string, string>();
  const ask = async (path: string, init: RequestInit) => {
    const cookie = [...cookies].map(([name, value]) => `${name}=${value}`).join("; ");
    const headers = { "x-forwarded-for": from, cookie, ...init.headers };
    const response = await fetch(address + path, { redirect: "manual", ...init, headers });
    for (const set of response.headers.getSetCookie()) {
      const [, name = "", value = ""] = /^([^=]+)=([^;]*)/.exec(set) ?? [];
      cookies.set(name, value);
    }
    return response;
  };
  return {
    get: (path) => ask(path, {}),
    send(path, fields, headers = {}) {
      const form = new FormData();
      for (const [name, value] of Object.entries(fields)) form.set(name, value);
      return ask(path, { method: "POST", body: form, headers: { accept: "application/json", ...headers } });
    },
  };
}

export const PUBLICATION = {
  title: "A mark that nobody knows",
  about: "Under a dish of pewter, worn on one side.",
  name: "Ansa Hollin",
  licence: "CC BY 4.0",
  credit: "Ansa Hollin",
  confirmed: "yes",
};

export const PROPOSAL = {
  mark: "Horse’s head in a hexagon",
  reasons: "The bridle and the beads of the frame agree.",
  basis: "compared photographs",
  name: "Bram Tiller",
};

/** Looks up a photograph to try that no entry has. */
export async function lookUpUnknown(client: Client): Promise<LookUpView> {
  const unknown = photographsToTry().find(({ entry }) => entry === null);
  const answer = await client.send("/api/look-ups", { try: nameToTry(unknown?.path ?? "") });
  return (await answer.json()) as LookUpView;
}

/** Publishes a look-up of its own. */
export async function askQuestion(client: Client): Promise<{ readonly id: string; readonly key: string }> {
  const lookUp = await lookUpUnknown(client);
  const answer = await client.send(`/api/look-ups/${lookUp.id}/publish`, PUBLICATION);
  if (!answer.ok) throw new Error(`It was not published: ${await answer.text()}`);
  return (await answer.json()) as { id: string; key: string };
}

/** The status of a refusal, with its field and rule. */
export async function refusalOf(answer: Response): Promise<string> {
  const { error } = (await answer.json()) as { error?: FieldError };
  return `${answer.status} ${error?.field} ${error?.rule}`;
}
