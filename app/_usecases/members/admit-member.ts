import type { FieldError } from "#core/field-error";
import { fail, ok, type Result } from "#core/result";
import type { Members } from "../ports.ts";

/** Lets a member in who has shown who they are, unless they are suspended. @returns the id */
export async function admitMember(members: Members, id: string): Promise<Result<string, FieldError>> {
  const account = await members.find(id);
  if (!account) return fail({ field: "whom", rule: "member-unknown", received: id.slice(0, 80) });
  if (account.suspendedAt === null) return ok(id);
  const date = account.suspendedAt.slice(0, 10);
  return fail({ field: "email", rule: "account-suspended", received: account.email, params: { date } });
}
