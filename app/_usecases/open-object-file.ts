import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import { MOST_FILES } from "#core/object-files/kept-file";
import { emptyFile } from "#core/object-files/object-file";
import type { Family } from "#core/object-files/vocabulary";
import { fail, ok, type Result } from "#core/result";
import type { ObjectFiles } from "./ports/object-files.ts";
import type { Clock, Randomness } from "./ports.ts";

type Needs = {
  readonly objectFiles: ObjectFiles;
  readonly clock: Clock;
  readonly randomness: Randomness;
};

export type NewFile = { readonly title: string; readonly family: Family; readonly description: string };

/** Opens a file for one object, its owner's alone. @returns its id */
export async function openObjectFile(
  { objectFiles, clock, randomness }: Needs,
  by: ActingMember,
  { title, family, description }: NewFile,
): Promise<Result<string, FieldError>> {
  const had = (await objectFiles.list(by.id, MOST_FILES + 1)).filter(
    ({ access }) => access === "owner",
  ).length;
  if (had >= MOST_FILES)
    return fail({
      field: "file",
      rule: "object-files-most",
      received: String(had),
      params: { most: MOST_FILES },
    });
  const id = randomness.token();
  await objectFiles.create(id, {
    content: { ...emptyFile(title, family), description },
    command: { is: "open" },
    at: clock.now(),
    by: { id: by.id, name: by.name },
  });
  return ok(id);
}
