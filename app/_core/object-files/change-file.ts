import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import { applyCommand } from "./apply-command.ts";
import { checkCommand } from "./check-command.ts";
import type { FileCommand } from "./commands.ts";
import type { ObjectFile } from "./object-file.ts";
import { sameValue } from "./same-value.ts";
import { partTouched } from "./touched.ts";

export type Changed = Result<ObjectFile, readonly FieldError[]>;

/**
 * A file with one change made. Where the change changes nothing (the same command again, the removal of what is gone)
 * it is the very same file, so that no version is kept of it.
 */
export function changeFile(file: ObjectFile, command: FileCommand): Changed {
  const errors = checkCommand(file, command);
  if (errors.length > 0) return fail(errors);
  const next = applyCommand(file, command);
  return ok(sameValue(file, next) ? file : next);
}

/**
 * Makes a change, begun on an older version, on the newest: changes of different parts go together, and one of a part
 * that somebody else changed meanwhile is refused, unless both say the same.
 */
export function changeOn(
  { madeOn, newest }: { readonly madeOn: ObjectFile; readonly newest: ObjectFile },
  command: FileCommand,
): Changed {
  const [then, now] = [partTouched(madeOn, command), partTouched(newest, command)];
  const changed = changeFile(newest, command);
  if (sameValue(then, now) || (changed.ok && changed.value === newest)) return changed;
  return fail([{ field: "version", rule: "changed-meanwhile", received: received(command.is) }]);
}
