import type { FieldError } from "#core/field-error";
import { parseEmail } from "#core/members/parse-account";
import { fail, ok, type Result } from "#core/result";
import { changeStanding } from "./members/change-standing.ts";
import type { Clock, Members, Sessions } from "./ports.ts";

type Needs = { readonly members: Members; readonly sessions: Sessions; readonly clock: Clock };

const ROLES = ["administrator", "moderator"] as const;
const REASON = "Appointed by who runs the host, on its command line.";

/** Who runs the host appoints a member: the first administrator can be made by nobody else. @returns the member's name */
export async function appointByHost(
  needs: Needs,
  asked: { readonly email: string; readonly role: string },
): Promise<Result<{ readonly name: string; readonly changed: boolean }, FieldError>> {
  const role = ROLES.find((each) => each === asked.role);
  if (!role)
    return fail({
      field: "role",
      rule: "one-of",
      received: asked.role,
      params: { allowed: ROLES.join(", ") },
    });
  const email = parseEmail(asked.email);
  if (!email.ok) return email;
  const found = await needs.members.byEmail(email.value);
  const account = found && (await needs.members.find(found.id));
  if (!account) return fail({ field: "email", rule: "member-unknown", received: email.value });
  const changed = await changeStanding(
    needs,
    { kind: "host" },
    { member: account.id, command: { type: `appoint ${role}` }, reason: REASON },
  );
  return changed.ok ? ok({ name: account.name, changed: changed.value.length > 0 }) : changed;
}
