import type { FieldError } from "#core/field-error";
import type { Stage } from "#core/look-ups/look-up";
import { fail, type Result } from "#core/result";
import { lookUpMark } from "#usecases/look-up-mark";
import { live } from "./live.ts";
import { answerLookUp } from "./look-up-answer.ts";
import { readLookUpForm } from "./look-up-form.ts";
import { ensureOwnerHash } from "./owner.ts";

/** Looks up what the photographs of a multipart form show; answers as the client accepts: a page, stages as they pass, or JSON. */
export async function takeLookUp(request: Request): Promise<Response> {
  const wired = await live();
  const { queue } = wired;
  const owner = await ensureOwnerHash(new URL(request.url).protocol === "https:");
  const { form, sender } = await readLookUpForm(request, wired, owner);
  const run = async (onStage: (stage: Stage) => void): Promise<Result<{ id: string }, FieldError>> => {
    if (!form.ok) return form;
    if (queue.isFull) return fail({ field: "request", rule: "busy", received: String(queue.waiting) });
    const days = wired.environment.lookUpDays;
    return queue.run(() => lookUpMark(wired, { ...form.value, ownerHash: owner, days, onStage }));
  };
  return answerLookUp(request, sender, run);
}
