import type { Holder } from "#adapters/data-folder-lock";

/**
 * Asks the running host, which holds the embedded database, with its operator's key.
 * @returns the lines of its answer, each as soon as it comes
 * @throws Error when it answers nowhere yet, refuses, or failed
 */
export async function* askHost<Line extends object>(
  holder: Holder,
  path: string,
  question: object,
): AsyncGenerator<Line> {
  const response = await reach(holder, path, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(question),
  });
  if (!response.body) return;
  for await (const text of linesOf(response.body)) {
    const line: unknown = JSON.parse(text);
    const { error } = line as { readonly error?: { readonly received: string } };
    if (error) throw new Error(`The host failed; its log has event ${error.received}.`);
    yield line as Awaited<Line>;
  }
}

/** The JSON that the running host answers its operator with. */
export async function readFromHost<T>(holder: Holder, path: string): Promise<T> {
  return (await (await reach(holder, path, {})).json()) as T;
}

/** Sends the running host something on behalf of its operator. @returns the JSON that it answers */
export async function sendToHost<T>(holder: Holder, path: string, asked: object): Promise<T> {
  const headers = { "content-type": "application/json" };
  return (await (
    await reach(holder, path, { method: "POST", headers, body: JSON.stringify(asked) })
  ).json()) as T;
}

async function reach(holder: Holder, path: string, init: RequestInit): Promise<Response> {
  if (holder.address === null)
    throw new Error(
      `Process ${holder.pid} holds the data folder and answers nowhere yet. Try again in a moment.`,
    );
  const headers = { ...init.headers, authorization: `Bearer ${holder.key}` };
  const response = await fetch(new URL(path, holder.address), { ...init, headers });
  if (!response.ok)
    throw new Error(`The host at ${holder.address} answered ${response.status}: ${await response.text()}`);
  return response;
}

async function* linesOf(body: ReadableStream<Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  let rest = "";
  for await (const chunk of body as unknown as AsyncIterable<Uint8Array>) {
    const lines = (rest + decoder.decode(chunk, { stream: true })).split("\n");
    rest = lines.pop() ?? "";
    yield* lines.filter((line) => line !== "");
  }
  if (rest !== "") yield rest;
}
