import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import { parsePassword, parseProfile } from "#core/members/parse-account";
import type { Typed } from "#core/questions/typed-text";
import { fail, ok, type Result } from "#core/result";
import { changePassword, changeProfile } from "#usecases/change-account";
import { currentSession } from "./actor.ts";
import { live } from "./live.ts";
import { isOfDemo } from "./reading-members.ts";
import { done, readWords, refuse } from "./words-form.ts";

const ACTS = ["profile", "password", "end-session", "sign-out-elsewhere"] as const;
type Act = (typeof ACTS)[number];

/** Does to an account what its member asks for. */
export async function changeAccount(request: Request, actor: ActingMember, act: string): Promise<Response> {
  const known = ACTS.find((each) => each === act);
  if (!known) return new Response(null, { status: 404 });
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, "/account");
  const { current: _, new_password: __, ...typed } = form.value;
  const changed = await change(actor, known, form.value);
  if (!changed.ok) return refuse(request, changed.error, typed, "/account");
  return done(request, {}, `/account?said=${known}`);
}

async function change(
  actor: ActingMember,
  act: Act,
  typed: Typed,
): Promise<Result<null, readonly FieldError[]>> {
  const wired = await live();
  const session = (await currentSession())?.session ?? "";
  switch (act) {
    case "profile": {
      const profile = parseProfile(typed);
      return profile.ok ? asList(await changeProfile(wired, actor, profile.value)) : profile;
    }
    case "password": {
      if (await isOfDemo(actor.id))
        return fail([{ field: "new_password", rule: "demo-account", received: actor.name }]);
      const password = parsePassword("new_password", typed.new_password ?? "");
      if (!password.ok) return fail([password.error]);
      const asked = { current: typed.current ?? "", password: password.value, session };
      return asList(await changePassword(wired, actor, asked));
    }
    case "end-session":
      await wired.sessions.revoke(actor.id, typed.session ?? "", wired.clock.now());
      return ok(null);
    case "sign-out-elsewhere":
      await wired.sessions.revokeAll(actor.id, wired.clock.now(), session);
      return ok(null);
  }
}

const asList = (result: Result<null, FieldError>): Result<null, readonly FieldError[]> =>
  result.ok ? result : fail([result.error]);
