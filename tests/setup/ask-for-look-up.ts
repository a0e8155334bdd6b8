import { basename } from "node:path";
import type { LookUpView } from "#core/look-ups/look-up";
import { photographsToTry } from "./photographs-to-try.ts";

/** The name under which the app offers a photograph to try: its file's, without the ending. */
export const nameToTry = (path: string): string => basename(path).replace(/\.\w+$/, "");

/** Looks up the first photograph to try of a known mark, or of the one whose entry is named, without a browser. */
export async function askForLookUp(address: string, wanted?: string): Promise<LookUpView> {
  const answer = await lookUpToTry(address, wanted);
  if (!answer.ok) throw new Error(`The look-up was answered with ${answer.status}: ${await answer.text()}`);
  return (await answer.json()) as LookUpView;
}

/** The same, as the app answers it. */
export function lookUpToTry(address: string, wanted?: string): Promise<Response> {
  const first = photographsToTry().find(({ entry }) =>
    wanted === undefined ? entry !== null : entry === wanted,
  );
  if (!first) throw new Error(`The demo has no photograph to try of ${wanted ?? "a known mark"}.`);
  const form = new FormData();
  form.set("try", nameToTry(first.path));
  return fetch(`${address}/api/look-ups`, {
    method: "POST",
    headers: { accept: "application/json" },
    body: form,
  });
}
