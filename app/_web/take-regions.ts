import type { FieldError } from "#core/field-error";
import { IMAGE_LIMITS } from "#core/photographs/limits";
import { fail, type Result } from "#core/result";
import { type ProposedRegions, proposeRegions } from "#usecases/propose-regions";
import { live } from "./live.ts";
import { statusOf } from "./look-up-answer.ts";
import { readForm } from "./read-form.ts";

/** Says where the mark may be in the photograph of a multipart form, as JSON; nothing is kept. */
export async function takeRegions(request: Request): Promise<Response> {
  const proposed = await propose(request);
  return proposed.ok
    ? Response.json(proposed.value)
    : Response.json({ error: proposed.error }, { status: statusOf(proposed.error) });
}

async function propose(request: Request): Promise<Result<ProposedRegions, FieldError>> {
  const form = await readForm(request, IMAGE_LIMITS.bytes);
  if (!form.ok) return form;
  const file = form.value.get("photograph");
  if (!(file instanceof File)) return fail({ field: "photograph", rule: "image-missing", received: "" });
  const bytes = new Uint8Array(await file.arrayBuffer());
  const wired = await live();
  if (wired.queue.isFull)
    return fail({ field: "request", rule: "busy", received: String(wired.queue.waiting) });
  return wired.queue.run(() => proposeRegions(wired, bytes));
}
