import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import { redirect } from "../look-up-answer.ts";
import { writer } from "./own-draft.ts";

/** Programs and our own scripts ask for JSON; forms are led to a page. */
export const wantsJson = (request: Request): boolean =>
  (request.headers.get("accept") ?? "").includes("application/json");

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
  if (rule === "sign-in-first") return 401;
  if (rule === "draft-unknown" || rule === "revision-unknown") return 404;
  if (rule === "draft-newer" || rule === "revised-meanwhile") return 409;
  if (rule === "image-bytes" || rule === "images-together" || rule === "form-bytes") return 413;
  return 422;
}

/** Does something as the member who is signed in; anybody else is led to where one signs in. */
export async function asWriter(
  request: Request,
  back: string,
  act: (member: ActingMember) => Promise<Response>,
): Promise<Response> {
  const member = await writer();
  if (member) return act(member);
  const error: FieldError = { field: "account", rule: "sign-in-first", received: "write a draft" };
  if (wantsJson(request)) return Response.json({ error, errors: [error] }, { status: 401 });
  return redirect(`/sign-in?${new URLSearchParams({ to: back })}`);
}
