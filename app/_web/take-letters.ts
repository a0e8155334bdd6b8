import type { FieldError } from "#core/field-error";
import { readProposals } from "#usecases/read-proposals";
import { live } from "./live.ts";
import { statusOf } from "./look-up-answer.ts";
import { readLookUpForm } from "./look-up-form.ts";
import { ownerHash } from "./owner.ts";

/** Proposes the letters of a photograph's region from the form that a look-up is asked with; keeps nothing of it. */
export async function takeLetters(request: Request): Promise<Response> {
  const wired = await live();
  const { queue } = wired;
  const refuse = (error: FieldError) =>
    Response.json({ error }, { status: statusOf(error), headers: { "cache-control": "no-store" } });
  const { form } = await readLookUpForm(request, wired, (await ownerHash()) ?? "");
  if (!form.ok) return refuse(form.error);
  if (queue.isFull) return refuse({ field: "request", rule: "busy", received: String(queue.waiting) });
  // A photograph is read in its turn among the look-ups; its letters then have a thread, and a queue, of their own.
  const images = {
    read: (bytes: Uint8Array, purpose: "look-up" | "reference") =>
      queue.run(() => wired.images.read(bytes, purpose)),
  };
  const [photograph] = form.value.photographs;
  if (!photograph) return refuse({ field: "photograph", rule: "image-missing", received: "" });
  const proposals = await readProposals({ images, letters: wired.letters }, photograph);
  if (!proposals.ok) return refuse(proposals.error);
  return Response.json({ proposals: proposals.value }, { headers: { "cache-control": "no-store" } });
}
