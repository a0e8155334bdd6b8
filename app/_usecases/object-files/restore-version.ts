import { type FieldError, received } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import { sameValue } from "#core/object-files/same-value";
import { fail, ok, type Result } from "#core/result";
import type { ObjectFiles } from "../ports/object-files.ts";
import type { Clock } from "../ports.ts";
import { findObjectFile } from "./find-object-file.ts";

type Needs = { readonly objectFiles: ObjectFiles; readonly clock: Clock };

type Asked = {
  readonly id: string;
  readonly by: ActingMember;
  /** Number of the version that is brought back, as it was given. */
  readonly number: string;
  /** The version that was the newest when it was asked for. */
  readonly had: number;
};

/** How often it is tried anew because another change came first. */
const TRIES = 8;

/**
 * Brings an older version back: a new one that says the same. Nothing is lost by it, since what stood there until now
 * is a version too. Where the file says so already, none is added.
 * @returns the number of the version that says so
 */
export async function restoreVersion(
  needs: Needs,
  asked: Asked,
): Promise<Result<number, readonly FieldError[]>> {
  for (let tries = 0; tries < TRIES; tries++) {
    const restored = await tryToRestore(needs, asked);
    if (restored) return restored;
  }
  return refused("file", "busy", asked.id);
}

/** @returns null when another version came meanwhile, and all is to be looked at anew */
async function tryToRestore(
  { objectFiles, clock }: Needs,
  { id, by, number, had }: Asked,
): Promise<Result<number, readonly FieldError[]> | null> {
  const found = await findObjectFile({ objectFiles }, id, by.id);
  if (!found) return refused("file", "object-file-unknown", id);
  if (found.access === "view") return refused("file", "object-view-only", by.name);
  const { kept } = found;
  const wanted = /^[1-9]\d{0,8}$/.test(number) ? Number(number) : 0;
  const content = wanted > 0 ? await objectFiles.contentOf(id, wanted) : null;
  if (content === null) return refused("number", "object-version-unknown", number);
  if (sameValue(content, kept.content)) return ok(kept.version);
  // All of the file is put in place of all of it: what others wrote since would go unseen.
  const since = (await objectFiles.versions(id)).filter((version) => version.number > had);
  if (since.some((version) => version.by.id !== by.id))
    return refused("file", "object-restore-overtaken", String(kept.version));
  const command = { is: "restore", number: wanted };
  const next = { content, command, at: clock.now(), by: { id: by.id, name: by.name } };
  return (await objectFiles.append(id, kept.version, next)) ? ok(kept.version + 1) : null;
}

const refused = (field: string, rule: string, value: string): Result<never, readonly FieldError[]> =>
  fail([{ field, rule, received: received(value) }]);
