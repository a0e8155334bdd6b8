import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import { type AccessCommand, decideAccess } from "#core/object-files/access";
import type { Way } from "#core/object-files/kept-file";
import { fail, ok, type Result } from "#core/result";
import type { ObjectAccess, ObjectFiles } from "./ports/object-files.ts";
import type { Clock, Keys, Members } from "./ports.ts";

type Needs = {
  readonly objectFiles: ObjectFiles;
  readonly objectAccess: ObjectAccess;
  readonly members: Members;
  readonly keys: Keys;
  readonly clock: Clock;
};

/** What is asked for; whom to invite as typed: a name, an id, or the address of a page. */
export type AccessAsked =
  | Exclude<AccessCommand, { kind: "invite" }>
  | { readonly kind: "invite"; readonly member: string; readonly way: Way };

/**
 * Lets somebody into a file or shuts them out; for its owner alone, to anybody else the file is as if it were not.
 * @returns the key of the link that was made, shown this once; null when nothing was to be shown
 */
export async function openObjectToOthers(
  needs: Needs,
  id: string,
  by: ActingMember,
  asked: AccessAsked,
): Promise<Result<string | null, FieldError>> {
  const kept = await needs.objectFiles.find(id);
  if (!kept || kept.owner.id !== by.id)
    return fail({ field: "file", rule: "object-file-unknown", received: id });
  const command = await named(needs, asked);
  if (!command.ok) return command;
  const decided = decideAccess(kept, command.value);
  if (!decided.ok) return decided;
  if (decided.value === null) return ok(null);
  const made = decided.value.type === "link made" ? needs.keys.make() : null;
  const event = { ...decided.value, at: needs.clock.now(), by: { id: by.id, name: by.name } };
  await needs.objectAccess.record(id, event, made?.hash ?? null);
  return ok(made?.key ?? null);
}

async function named({ members }: Needs, asked: AccessAsked): Promise<Result<AccessCommand, FieldError>> {
  if (asked.kind !== "invite") return ok(asked);
  const typed = asked.member.trim();
  if (typed === "") return fail({ field: "invited", rule: "required", received: "" });
  const pasted = /\/members\/([\w-]{36})/.exec(typed)?.[1] ?? typed;
  const byId = /^[0-9a-f-]{36}$/i.test(pasted) ? await members.find(pasted) : null;
  if (byId) return ok({ kind: "invite", member: { id: byId.id, name: byId.name }, way: asked.way });
  const found = (await members.search(typed, 0, 10)).filter(
    ({ name }) => name.toLocaleLowerCase("en") === typed.toLocaleLowerCase("en"),
  );
  const [one] = found;
  if (!one) return fail({ field: "invited", rule: "member-unknown", received: typed });
  if (found.length > 1) return fail({ field: "invited", rule: "member-name-shared", received: typed });
  return ok({ kind: "invite", member: { id: one.id, name: one.name }, way: asked.way });
}
