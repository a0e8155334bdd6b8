import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import type { FileCommand } from "#core/object-files/commands";
import { readCommand } from "#core/object-files/read-command";
import type { Typed } from "#core/questions/typed-text";
import { fail, ok, type Result } from "#core/result";
import { openObjectFile } from "#usecases/open-object-file";
import { takeWorksheet } from "#usecases/take-worksheet";
import { type Live, live } from "../live.ts";
import { done, readWords, refuse } from "../words-form.ts";
import { readNewFile } from "./begin-object-file.ts";

const PAGE = "/objects/take";

/** Takes a worksheet into one of a member's files, or into a new one, by a form. */
export async function takeWorksheetByForm(request: Request, by: ActingMember): Promise<Response> {
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, PAGE);
  const typed = form.value;
  const wired = await live();
  const read = readCommand("pieces", typed, { by, at: wired.clock.now().toISOString() });
  if (!read.ok) return refuse(request, read.error, typed, PAGE);
  const into = await fileToTakeInto(wired, by, typed);
  if (!into.ok) return refuse(request, into.error, typed, PAGE);
  const id = into.value;
  const taken = await takeWorksheet(wired, { id, by, had: 0, pieces: itemsOf(read.value) });
  if (taken.ok)
    return done(
      request,
      { id, ...taken.value },
      `/objects/${id}/finding?taken=${taken.value.taken}&known=${taken.value.known}#evidence`,
    );
  // What keeps the file from taking it is said at the choice of the file.
  const errors = taken.error.map((each) => (each.field === "file" ? { ...each, field: "into" } : each));
  return refuse(request, errors, typed, PAGE);
}

const itemsOf = (command: FileCommand) => (command.is === "pieces" ? command.items : []);

async function fileToTakeInto(
  wired: Live,
  by: ActingMember,
  typed: Typed,
): Promise<Result<string, readonly FieldError[]>> {
  const { into = "" } = typed;
  if (into === "") return fail([{ field: "into", rule: "required", received: "" }]);
  if (into !== "new") return ok(into);
  const read = readNewFile(typed);
  if (!read.ok) return read;
  const opened = await openObjectFile(wired, by, read.value);
  return opened.ok ? opened : fail([opened.error]);
}
