import type { FieldError } from "#core/field-error";
import { redirect } from "../look-up-answer.ts";
import { wantsJson } from "../words-form.ts";

/** There is no such draft, or it is not theirs: which of both is not said. */
export const noDraft = (): Response => new Response(null, { status: 404 });

/** Refuses; a person is led to a page that says why. */
export function refuseDraft(
  request: Request,
  error: FieldError,
  page: string,
  status = statusOf(error),
): Response {
  if (wantsJson(request)) return Response.json({ error, errors: [error] }, { status });
  const query = new URLSearchParams({ rule: error.rule, received: error.received, field: error.field });
  for (const [name, value] of Object.entries(error.params ?? {})) query.set(`param-${name}`, String(value));
  return redirect(`${page}${page.includes("?") ? "&" : "?"}${query}`);
}

function statusOf({ rule }: FieldError): number {
  if (rule === "draft-unknown" || rule === "revision-unknown") return 404;
  if (rule === "draft-newer" || rule === "revised-meanwhile") return 409;
  if (rule === "image-bytes" || rule === "images-together" || rule === "form-bytes") return 413;
  return 422;
}
