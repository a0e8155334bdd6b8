import { nextPath } from "#core/members/next-path";
import { parseJoining } from "#core/members/parse-account";
import { joinAsMember } from "#usecases/join-as-member";
import { SESSION_COOKIES } from "./auth/session-cookie.ts";
import { postThroughNextAuth } from "./auth/through-next-auth.ts";
import { countClient } from "./client-pace.ts";
import { live } from "./live.ts";
import { done, readWords, refuse } from "./words-form.ts";

/** Makes an account from a form, and signs its member in. */
export async function join(request: Request): Promise<Response> {
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, "/join");
  const { password, ...typed } = form.value;
  const path = nextPath(typed.next);
  const page = `/join?next=${encodeURIComponent(path)}`;
  const joining = parseJoining(form.value);
  if (!joining.ok) return refuse(request, joining.error, typed, page);
  const tooSoon = countClient(request, "join");
  if (tooSoon) return refuse(request, [tooSoon], typed, page);
  const wired = await live();
  const joined = await joinAsMember(wired, joining.value);
  if (!joined.ok) return refuse(request, [joined.error], typed, page);
  const { email } = joining.value;
  const signedIn = await postThroughNextAuth(wired, request, ["callback", "password"], {
    email,
    password: password ?? "",
    callbackUrl: path,
  });
  if (signedIn.refused) return refuse(request, [signedIn.refused], { email }, "/sign-in");
  const response = done(request, { id: joined.value }, path === "/" ? "/account?said=joined" : path);
  for (const cookie of signedIn.cookies)
    if (SESSION_COOKIES.some((name) => cookie.startsWith(`${name}=`)))
      response.headers.append("set-cookie", cookie);
  return response;
}
