import type { FieldError } from "#core/field-error";
import type { KeptLookUp } from "#core/look-ups/kept-look-up";
import { fail, type Result } from "#core/result";
import type { PhotographToLookUp } from "./look-up/read-photographs.ts";
import { findFileToChange } from "./object-files/find-object-file.ts";
import type { ObjectFiles } from "./ports/object-files.ts";
import type { Blobs } from "./ports.ts";

type Needs = {
  readonly objectFiles: ObjectFiles;
  readonly blobs: Blobs;
  /** The look-up that everybody asks. */
  readonly lookUp: (photographs: readonly PhotographToLookUp[]) => Promise<Result<KeptLookUp, FieldError>>;
};

type Asked = {
  readonly id: string;
  readonly member: string;
  /** Id of the mark whose photographs are looked up. */
  readonly mark: string;
};

/** Photographs of one mark that a look-up asks with. */
const MOST = 3;

/** Looks a mark of a file up by the file's own photographs of it. */
export async function lookUpObjectMark(
  needs: Needs,
  { id, member, mark }: Asked,
): Promise<Result<KeptLookUp, FieldError>> {
  const found = await findFileToChange(needs, id, member);
  const content = found?.kept.content;
  if (!content?.marks.some((each) => each.id === mark))
    return fail({ field: "file", rule: "object-file-unknown", received: id });
  const own = content.photographs.filter((each) => each.of === "mark" && each.item === mark).slice(-MOST);
  const all = await Promise.all(own.map(({ sha256 }) => needs.blobs.get(sha256)));
  const photographs = all.flatMap((bytes) => (bytes ? [{ bytes, region: null, mark: 1 }] : []));
  if (photographs.length === 0)
    return fail({ field: "photograph", rule: "object-mark-photograph-first", received: "" });
  return needs.lookUp(photographs);
}
