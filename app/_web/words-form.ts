import type { FieldError } from "#core/field-error";
import type { Typed } from "#core/questions/typed-text";
import { fail, ok, type Result } from "#core/result";
import { keepForm } from "./kept-forms.ts";
import { redirect } from "./look-up-answer.ts";
import { readForm } from "./read-form.ts";

/** What the id of a question or look-up can look like; anything else is none, and leads nowhere. */
export const isToken = (id: string): boolean => /^[\w-]{1,64}$/.test(id);

/** Reads a form of words alone; files in it are not looked at. */
export async function readWords(request: Request): Promise<Result<Typed, FieldError>> {
  const form = await readForm(request, 0);
  if (!form.ok) {
    const { rule, received } = form.error;
    return fail(rule === "image-bytes" ? { field: "request", rule: "form-bytes", received } : form.error);
  }
  const words = [...form.value.entries()].flatMap(([name, value]) =>
    typeof value === "string" ? [[name, value] as const] : [],
  );
  return ok(Object.fromEntries(words));
}

/**
 * Refuses what was sent: a program is told in JSON, a person is led back to the page of the form, which shows what
 * was typed and what is wrong with it.
 * @param page path of that page
 */
export function refuse(
  request: Request,
  errors: readonly FieldError[],
  typed: Typed,
  page: string,
): Response {
  const [first] = errors;
  const status = first ? statusOf(first) : 422;
  if (wantsJson(request)) {
    const headers: HeadersInit =
      first && status === 429 ? { "retry-after": String(Number(first.params?.minutes ?? 1) * 60) } : {};
    return Response.json({ error: first, errors }, { status, headers });
  }
  return redirect(`${page}${page.includes("?") ? "&" : "?"}form=${keepForm({ errors, typed })}`);
}

/** Says that it is done: a program in JSON, a person by the page that shows it. */
export function done(request: Request, answer: object, page: string): Response {
  return wantsJson(request) ? Response.json(answer) : redirect(page);
}

export const wantsJson = (request: Request): boolean =>
  (request.headers.get("accept") ?? "").includes("application/json");

const FORBIDDEN = new Set([
  "account-suspended",
  "administrator-only",
  "asker-only",
  "host-only",
  "member-suspended",
  "not-oneself",
  "object-view-only",
  "role-needed",
]);

const UNKNOWN = new Set([
  "object-file-unknown",
  "object-version-unknown",
  "draft-unknown",
  "interest-unknown",
  "look-up-unknown",
  "member-unknown",
  "question-unknown",
  "revision-unknown",
]);

const OVERTAKEN = new Set([
  "draft-newer",
  "object-changed-meanwhile",
  "object-restore-overtaken",
  "revised-meanwhile",
]);

function statusOf({ rule }: FieldError): number {
  if (rule === "sign-in-first") return 401;
  if (FORBIDDEN.has(rule)) return 403;
  if (UNKNOWN.has(rule)) return 404;
  if (OVERTAKEN.has(rule)) return 409;
  if (["form-bytes", "image-bytes", "images-together", "object-form-bytes"].includes(rule)) return 413;
  if (rule === "too-often" || rule === "sign-in-too-often") return 429;
  if (rule === "busy" || rule === "question-busy") return 503;
  return 422;
}
