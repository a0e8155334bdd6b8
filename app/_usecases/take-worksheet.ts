import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import { evidenceOf } from "#core/object-files/evidence";
import type { EvidencePiece } from "#core/object-files/object-file";
import { piecesToTake } from "#core/object-files/pieces-to-take";
import { fail, ok, type Result } from "#core/result";
import type { Hash } from "#core/trail/chain";
import { changeObjectFile } from "./object-files/change-object-file.ts";
import { findObjectFile } from "./object-files/find-object-file.ts";
import { matchedEntries } from "./object-files/matched-entries.ts";
import type { ObjectFiles } from "./ports/object-files.ts";
import type { Clock, Entries } from "./ports.ts";

type Needs = {
  readonly objectFiles: ObjectFiles;
  readonly entries: Entries;
  readonly clock: Clock;
  readonly hash: Hash;
};

type Asked = {
  readonly id: string;
  readonly by: ActingMember;
  readonly had: number;
  readonly pieces: readonly EvidencePiece[];
};

export type Taken = {
  readonly version: number;
  /** Pieces that the file did not have. */
  readonly taken: number;
  /** Pieces that it has already, as they are or from its marks, observations, line and provenance. */
  readonly known: number;
};

/** Takes the evidence of a worksheet into a file, but what the file says already. */
export async function takeWorksheet(
  needs: Needs,
  { id, by, had, pieces }: Asked,
): Promise<Result<Taken, readonly FieldError[]>> {
  const found = await findObjectFile(needs, id, by.id);
  if (!found) return fail([{ field: "file", rule: "object-file-unknown", received: id }]);
  const { content } = found.kept;
  const items = piecesToTake(evidenceOf(content, await matchedEntries(needs, content)), pieces);
  const changed = await changeObjectFile(needs, { id, by, had, command: { is: "pieces", items } });
  if (!changed.ok) return changed;
  const now = await needs.objectFiles.contentOf(id, changed.value);
  const taken = (now?.pieces.length ?? 0) - content.pieces.length;
  return ok({ version: changed.value, taken, known: pieces.length - taken });
}
