import type { ActingMember } from "#core/members/member";
import { restoreVersion } from "#usecases/object-files/restore-version";
import { live } from "../live.ts";
import { done, readWords, refuse } from "../words-form.ts";

/** Brings a version of a file back, and leads to the history, which says so. */
export async function restoreByForm(request: Request, id: string, by: ActingMember): Promise<Response> {
  const page = `/objects/${id}/history`;
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, page);
  const { number = "", version = "" } = form.value;
  const restored = await restoreVersion(await live(), { id, by, number, had: Number(version) || 0 });
  if (!restored.ok) return refuse(request, restored.error, {}, page);
  return done(request, { id, version: restored.value }, `${page}?said=restored`);
}
