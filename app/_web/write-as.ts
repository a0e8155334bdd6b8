import type { ActingMember } from "#core/members/member";
import { nextPath } from "#core/members/next-path";
import type { Action } from "#core/permissions";
import type { Typed } from "#core/questions/typed-text";
import { requireMember } from "#usecases/review/require-member";
import { actor } from "./actor.ts";
import { keepForm } from "./kept-forms.ts";
import { redirect } from "./look-up-answer.ts";
import { originOf } from "./origin.ts";
import { readWords, wantsJson } from "./words-form.ts";
import { write } from "./write.ts";

type Handler<C> = (request: Request, actor: ActingMember, context: C) => Promise<Response>;

/**
 * The one wrapper round every signed-in write: where it comes from, whose session it is, whether the role allows it.
 * Who is not signed in is led to signing in and back to the page of the form, with what was typed; a program is told
 * in JSON.
 */
export function writeAs<C>(
  action: Action,
  handler: Handler<C>,
): (request: Request, context: C) => Promise<Response> {
  return write<C>(async (request, context) => {
    const who = await actor();
    const allowed = requireMember(who, action);
    if (allowed.ok) return handler(request, allowed.value, context);
    const { error } = allowed;
    const status = who.kind === "reader" ? 401 : 403;
    if (wantsJson(request)) return Response.json({ error, errors: [error] }, { status });
    const typed = await typedIn(request);
    const form = keepForm({ errors: status === 403 ? [error] : [], typed });
    return redirect(
      status === 401
        ? `/sign-in?next=${encodeURIComponent(withForm(pageOf(request, typed), form))}`
        : `/not-allowed?form=${form}`,
    );
  });
}

/** What was typed, to be shown again; never a password. */
async function typedIn(request: Request): Promise<Typed> {
  const words = await readWords(request);
  if (!words.ok) return {};
  return Object.fromEntries(Object.entries(words.value).filter(([name]) => !/password|current/.test(name)));
}

/**
 * The page on which the form stands, as the browser says or the form; the first page when neither does. Of a long
 * address a browser says only the host.
 */
function pageOf(request: Request, { page }: Typed): string {
  const from = request.headers.get("referer") ?? "";
  const origin = originOf(request);
  const path = from.startsWith(`${origin}/`) ? nextPath(from.slice(origin.length)) : "/";
  return path === "/" ? nextPath(page) : path;
}

function withForm(page: string, form: string): string {
  const url = new URL(page, "http://host.example");
  url.searchParams.delete("said");
  url.searchParams.set("form", form);
  return url.pathname + url.search;
}
