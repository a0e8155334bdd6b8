import type { FieldError } from "#core/field-error";
import type { Stage } from "#core/look-ups/look-up";
import type { Result } from "#core/result";
import { showLookUp } from "#usecases/show-look-up";
import { live } from "./live.ts";
import type { Sender } from "./look-up-form.ts";
import { streamLines } from "./stream-lines.ts";

type Run = (onStage: (stage: Stage) => void) => Promise<Result<{ id: string }, FieldError>>;

/** Answers a look-up as the client accepts: stages as they pass, the whole answer as JSON, or a page to go to. */
export async function answerLookUp(request: Request, sender: Sender | null, run: Run): Promise<Response> {
  const accept = request.headers.get("accept") ?? "";
  if (accept.includes("application/x-ndjson")) return streamStages(run);
  const result = await run(() => undefined);
  if (accept.includes("application/json")) return answerJson(result);
  return redirect(result.ok ? `/look-ups/${result.value.id}` : refusedAddress(result.error, sender));
}

async function answerJson(result: Result<{ id: string }, FieldError>): Promise<Response> {
  if (!result.ok) return Response.json({ error: result.error }, { status: statusOf(result.error) });
  const shown = await showLookUp(await live(), result.value.id);
  return Response.json(shown?.view ?? null);
}

function streamStages(run: Run): Response {
  return streamLines(async (send) => {
    const result = await run((stage) => send({ stage }));
    send(result.ok ? { stage: "done", id: result.value.id } : { error: result.error });
  });
}

/** A path on this host; without its own origin in the header, it works behind any name. */
export function redirect(path: string): Response {
  return new Response(null, { status: 303, headers: { location: path } });
}

/** A form on the page of an answer leads back there, any other to a page that says what was wrong. */
function refusedAddress({ field, rule, received, params }: FieldError, sender: Sender | null): string {
  const query = new URLSearchParams({ field, rule, received });
  for (const [name, value] of Object.entries(params ?? {})) query.set(`param-${name}`, String(value));
  for (const [name, value] of Object.entries(sender?.typed ?? {}))
    if (value !== "") query.set(`typed-${name}`, value.slice(0, 300));
  return sender?.lookUp ? `/look-ups/${sender.lookUp}?${query}#known` : `/look-up-refused?${query}`;
}

export function statusOf({ rule }: FieldError): number {
  if (rule === "image-bytes") return 413;
  if (rule === "busy" || rule === "preparing") return 503;
  return 422;
}
