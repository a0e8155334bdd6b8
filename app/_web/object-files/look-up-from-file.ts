import type { ActingMember } from "#core/members/member";
import { fail } from "#core/result";
import { lookUpMark } from "#usecases/look-up-mark";
import { lookUpObjectMark } from "#usecases/look-up-object-mark";
import { live } from "../live.ts";
import { ensureOwnerHash } from "../owner.ts";
import { done, readWords, refuse } from "../words-form.ts";

/** Looks a mark of a file up, and leads back to the mark with what was found. */
export async function lookUpFromFile(request: Request, id: string, by: ActingMember): Promise<Response> {
  const page = `/objects/${id}/marks`;
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, page);
  const wired = await live();
  const { queue, environment } = wired;
  const ownerHash = await ensureOwnerHash(new URL(request.url).protocol === "https:");
  const mark = form.value.mark ?? "";
  const asked = { id, member: by.id, mark };
  const lookUp = (photographs: Parameters<typeof lookUpMark>[1]["photographs"]) =>
    lookUpMark(wired, { photographs, ownerHash, days: environment.lookUpDays });
  const found = queue.isFull
    ? fail({ field: "request", rule: "busy", received: String(queue.waiting) })
    : await queue.run(() => lookUpObjectMark({ ...wired, lookUp }, asked));
  if (!found.ok) return refuse(request, [found.error], { did: "look-up", id: mark }, page);
  const answer = found.value.id;
  return done(request, { lookUp: answer }, `${page}?lookUp=${answer}&mark=${mark}#mark-${mark}`);
}
