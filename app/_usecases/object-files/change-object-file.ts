import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import { changeFile } from "#core/object-files/change-file";
import type { FileCommand } from "#core/object-files/commands";
import type { KeptFile } from "#core/object-files/kept-file";
import { partTouched } from "#core/object-files/touched";
import { fail, ok, type Result } from "#core/result";
import type { Hash } from "#core/trail/chain";
import type { ObjectFiles } from "../ports/object-files.ts";
import type { Clock } from "../ports.ts";
import { findObjectFile } from "./find-object-file.ts";

type Needs = { readonly objectFiles: ObjectFiles; readonly clock: Clock; readonly hash: Hash };

type Asked = {
  readonly id: string;
  readonly by: ActingMember;
  readonly command: FileCommand;
  /** The version on which the change was made. */
  readonly had: number;
};

/** How often a change is made anew because another came first. */
const TRIES = 8;

/**
 * Changes a file: applied to the newest version, whatever was changed elsewhere in it meanwhile. Where the same was
 * changed since, it is refused; where it says so already, no version is added.
 * @returns the number of the version that says so
 */
export async function changeObjectFile(
  needs: Needs,
  asked: Asked,
): Promise<Result<number, readonly FieldError[]>> {
  const { id, by, command } = asked;
  for (let tries = 0; tries < TRIES; tries++) {
    const found = await findObjectFile(needs, id, by.id);
    if (!found) return fail([{ field: "file", rule: "object-file-unknown", received: id }]);
    if (found.access === "view")
      return fail([{ field: "file", rule: "object-view-only", received: by.name }]);
    const { kept } = found;
    const changed = changeFile(kept.content, command);
    if (!changed.ok) return changed;
    if (changed.value === kept.content) return ok(kept.version);
    if (await isOvertaken(needs, kept, asked))
      return fail([{ field: "file", rule: "object-changed-meanwhile", received: String(kept.version) }]);
    const next = { content: changed.value, command, at: needs.clock.now(), by: { id: by.id, name: by.name } };
    if (await needs.objectFiles.append(id, kept.version, next)) return ok(kept.version + 1);
  }
  return fail([{ field: "file", rule: "busy", received: id }]);
}

/**
 * Was the very thing that is to be changed changed since, by somebody else? What the same member sent before may have
 * waited on a phone without a connection, and is followed by what they sent next.
 */
async function isOvertaken(
  { objectFiles, hash }: Needs,
  kept: KeptFile,
  { command, had, by }: Asked,
): Promise<boolean> {
  if (had >= kept.version) return false;
  const base = await objectFiles.contentOf(kept.id, had);
  if (base === null || hash(partTouched(base, command)) === hash(partTouched(kept.content, command)))
    return false;
  const since = (await objectFiles.versions(kept.id)).filter(({ number }) => number > had);
  return since.some((version) => version.by.id !== by.id);
}
