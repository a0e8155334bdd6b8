import type { ActingMember } from "#core/members/member";
import { FAMILIES } from "#core/object-files/vocabulary";
import { TypedReader } from "#core/questions/typed-text";
import { openObjectFile } from "#usecases/open-object-file";
import { live } from "../live.ts";
import { done, readWords, refuse } from "../words-form.ts";

const PAGE = "/objects/new";

/** Opens an object file by a form. */
export async function beginObjectFile(request: Request, member: ActingMember): Promise<Response> {
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, PAGE);
  const read = new TypedReader(form.value);
  const title = read.line("title", { shortest: 1, longest: 200 });
  const description = read.text("description", { longest: 4000 });
  const family = read.oneOf("family", FAMILIES);
  if (family === null || read.errors.length > 0) return refuse(request, read.errors, form.value, PAGE);
  const opened = await openObjectFile(await live(), member, { title, family, description });
  if (!opened.ok) return refuse(request, [opened.error], form.value, PAGE);
  return done(request, { id: opened.value }, `/objects/${opened.value}`);
}
