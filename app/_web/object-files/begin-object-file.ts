import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import { FAMILIES } from "#core/object-files/vocabulary";
import { type Typed, TypedReader } from "#core/questions/typed-text";
import { fail, ok, type Result } from "#core/result";
import { type NewFile, openObjectFile } from "#usecases/open-object-file";
import { live } from "../live.ts";
import { done, readWords, refuse } from "../words-form.ts";

const PAGE = "/objects/new";

/** Reads what a new file begins with. */
export function readNewFile(typed: Typed): Result<NewFile, readonly FieldError[]> {
  const read = new TypedReader(typed);
  const title = read.line("title", { shortest: 1, longest: 200 });
  const description = read.text("description", { longest: 4000 });
  const family = read.oneOf("family", FAMILIES);
  return family === null || read.errors.length > 0 ? fail(read.errors) : ok({ title, family, description });
}

/** Opens an object file by a form. */
export async function beginObjectFile(request: Request, member: ActingMember): Promise<Response> {
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, PAGE);
  const read = readNewFile(form.value);
  if (!read.ok) return refuse(request, read.error, form.value, PAGE);
  const opened = await openObjectFile(await live(), member, read.value);
  if (!opened.ok) return refuse(request, [opened.error], form.value, PAGE);
  return done(request, { id: opened.value }, `/objects/${opened.value}`);
}
