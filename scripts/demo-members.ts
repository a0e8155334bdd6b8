import type { FieldError } from "#core/field-error";
import type { StandingCommand } from "#core/members/decide-standing";
import type { DemoMember } from "#core/members/demo-member";
import type { Result } from "#core/result";
import { changeStanding } from "#usecases/members/change-standing";
import type { Live } from "#web/live";
import { sentence } from "./error-sentences.ts";

const REASON = "Appointed when the demo was made, by who invented it.";

/**
 * Lets the demo's people be members, with what they are appointed to and have declared, since the day that
 * seed/members.json says. What is there already is left alone. @returns how many there are
 */
export async function takeDemoMembersIn(wired: Live): Promise<number> {
  const members = await wired.demoMembers.all();
  for (const member of members) await takeIn(wired, member);
  return members.length;
}

async function takeIn(wired: Live, member: DemoMember): Promise<void> {
  const at = new Date(`${member.joined}T09:00:00.000Z`);
  const { id, name, email, about } = member;
  const made = await wired.members.create({ id, name, email, about, passwordHash: null, at });
  if (made === null) return;
  const then = { ...wired, clock: { now: () => at } };
  for (const command of commandsFor(member))
    passed(await changeStanding(then, { kind: "host" }, { member: id, command, reason: REASON }));
  for (const interest of member.interests) await wired.interests.declare(id, interest, at);
}

const commandsFor = ({ roles, fields }: DemoMember): readonly StandingCommand[] => [
  ...(fields.length > 0 ? [{ type: "appoint reviewer", fields } as const] : []),
  ...(roles.includes("moderator") ? [{ type: "appoint moderator" } as const] : []),
  ...(roles.includes("administrator") ? [{ type: "appoint administrator" } as const] : []),
];

function passed<T>(result: Result<T, FieldError>): void {
  if (!result.ok) throw new Error(`A member of the demo was refused:\n${sentence(result.error)}`);
}
