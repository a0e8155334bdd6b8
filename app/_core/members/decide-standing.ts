import type { Field } from "../entries/vocabulary.ts";
import { type FieldError, received } from "../field-error.ts";
import type { Action } from "../permissions.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Member, MemberEvent, Standing } from "./account.ts";
import type { ActingMember } from "./member.ts";

/** What somebody wants to happen to a member's standing. */
export type StandingCommand =
  /** In these fields from now on; none ends the appointment. */
  | { readonly type: "appoint reviewer"; readonly fields: readonly Field[] }
  | { readonly type: "appoint moderator" }
  | { readonly type: "dismiss moderator" }
  | { readonly type: "appoint administrator" }
  | { readonly type: "suspend" }
  | { readonly type: "restore" };

/** Who acts: a member, or the host who runs the program. */
export type Appointer = ActingMember | { readonly kind: "host" };

/** What a command needs to be allowed; null when only the host may. */
export function actionOf({ type }: StandingCommand): Action | null {
  switch (type) {
    case "appoint reviewer":
      return "appoint a reviewer";
    case "appoint moderator":
    case "dismiss moderator":
      return "appoint a moderator";
    case "suspend":
    case "restore":
      return "suspend a member";
    case "appoint administrator":
      return null;
  }
}

/** Decides what happens; nothing does where it stands so already. Whether the role allows it was asked before. */
export function decideStanding(
  member: Member,
  by: Appointer,
  command: StandingCommand,
  reason: string,
  at: string,
): Result<readonly MemberEvent[], FieldError> {
  const refused = whyNot(member, by, command);
  if (refused) return fail({ field: "whom", rule: refused, received: received(member.name) });
  const about = {
    at,
    by: by.kind === "host" ? { id: null, name: "host" } : { id: by.id, name: by.name },
    member: { id: member.id, name: member.name },
    reason,
  };
  switch (command.type) {
    case "appoint reviewer":
      return ok(reviewerEvents(member, command.fields, about));
    case "appoint moderator":
      return ok(member.isModerator ? [] : [{ type: "moderator appointed", ...about }]);
    case "dismiss moderator":
      return ok(member.isModerator ? [{ type: "appointment ended", role: "moderator", ...about }] : []);
    case "appoint administrator":
      return ok(member.isAdministrator ? [] : [{ type: "administrator appointed", ...about }]);
    case "suspend":
      return ok(member.suspendedAt === null ? [{ type: "member suspended", ...about }] : []);
    case "restore":
      return ok(member.suspendedAt === null ? [] : [{ type: "member restored", ...about }]);
  }
}

/** The standing after something happened. */
export function standingAfter(before: Standing, events: readonly MemberEvent[]): Standing {
  let standing = before;
  for (const event of events) standing = { ...standing, ...changedBy(event) };
  return standing;
}

function changedBy(event: MemberEvent): Partial<Standing> {
  switch (event.type) {
    case "reviewer appointed":
      return { fields: event.fields };
    case "moderator appointed":
      return { isModerator: true };
    case "administrator appointed":
      return { isAdministrator: true };
    case "appointment ended":
      return event.role === "reviewer" ? { fields: [] } : { isModerator: false };
    case "member suspended":
      return { suspendedAt: event.at };
    case "member restored":
      return { suspendedAt: null };
  }
}

/** The rule that forbids it; null when none does. */
function whyNot(member: Member, by: Appointer, command: StandingCommand): string | null {
  if (by.kind === "host") return null;
  if (command.type === "appoint administrator") return "host-only";
  if (by.id === member.id) return "not-oneself";
  const isOfHouse = member.isModerator || member.isAdministrator;
  const concernsSuspension = command.type === "suspend" || command.type === "restore";
  if (concernsSuspension && isOfHouse && !by.roles.includes("administrator")) return "administrator-only";
  const appoints = command.type === "appoint reviewer" || command.type === "appoint moderator";
  if (appoints && member.suspendedAt !== null) return "whom-suspended";
  return null;
}

type About = Pick<MemberEvent, "at" | "by" | "member" | "reason">;

function reviewerEvents(member: Member, fields: readonly Field[], about: About): readonly MemberEvent[] {
  const wanted = [...new Set(fields)];
  const same =
    wanted.length === member.fields.length && wanted.every((field) => member.fields.includes(field));
  if (same) return [];
  if (wanted.length === 0) return [{ type: "appointment ended", role: "reviewer", ...about }];
  return [{ type: "reviewer appointed", fields: wanted, ...about }];
}
