import type { FieldError } from "#core/field-error";
import type { Actor } from "#core/members/member";
import { IMAGE_LIMITS } from "#core/photographs/limits";
import { type Typed, tidyLine } from "#core/questions/typed-text";
import { fail, ok, type Result } from "#core/result";
import { parseChallenge } from "#core/review/parse-acts";
import { challengeEntry, type EvidencePhotograph } from "#usecases/challenge-entry";
import { answer, tokenIn } from "./answer-act.ts";
import { live } from "./live.ts";
import { pathsIn } from "./paths-in-form.ts";
import { readForm } from "./read-form.ts";
import { refuse } from "./words-form.ts";

/** Photographs that one challenge takes. */
const MOST = 6;
const TOGETHER = 3 * IMAGE_LIMITS.bytes;
const LONGEST = 120;

/** Challenges an entry's verified revision by a form that may hold photographs. */
export async function challengeByForm(request: Request, slug: string, by: Actor): Promise<Response> {
  const form = await readForm(request, TOGETHER, "images-together");
  if (!form.ok) return refuse(request, [form.error], {}, `/entries/${slug}`);
  const typed = { ...wordsIn(form.value), did: "challenge" };
  const paths = pathsIn(typed, slug, "challenge");
  const read = parseChallenge(typed);
  const photographs = await photographsIn(form.value);
  const errors = [read, photographs].flatMap((each) => (each.ok ? [] : each.error));
  if (!read.ok || !photographs.ok) return refuse(request, errors, typed, paths.refused);
  const wired = await live();
  const challenge = tokenIn(typed, "challenge", wired);
  const given = { challenge, ...read.value, photographs: photographs.value };
  return answer(request, await challengeEntry(wired, by, slug, given), typed, paths);
}

const wordsIn = (form: FormData): Typed =>
  Object.fromEntries(
    [...form.entries()].flatMap(([name, value]) =>
      typeof value === "string" ? [[name, value] as const] : [],
    ),
  );

async function photographsIn(
  form: FormData,
): Promise<Result<readonly EvidencePhotograph[], readonly FieldError[]>> {
  // A file field that nobody filled in is sent as an empty file without a name.
  const files = form
    .getAll("photograph")
    .map((file) => (file instanceof File && file.name !== "" ? file : null));
  const chosen = files.filter((file) => file !== null).length;
  const errors: FieldError[] = [];
  if (chosen > MOST)
    errors.push({
      field: "photograph",
      rule: "evidence-most",
      received: String(chosen),
      params: { most: MOST },
    });
  const photographs: EvidencePhotograph[] = [];
  for (const [i, file] of files.entries()) {
    if (file === null) continue;
    const [licence, credit] = (["licence", "credit"] as const).map((name) => {
      const text = tidyLine(String(form.getAll(`photograph_${name}`)[i] ?? ""));
      if (text === "") errors.push({ field: name, rule: "required", received: "" });
      if (text.length > LONGEST)
        errors.push({
          field: name,
          rule: "text-longest",
          received: text.slice(0, 80),
          params: { longest: LONGEST, length: text.length },
        });
      return text;
    });
    const bytes = new Uint8Array(await file.arrayBuffer());
    photographs.push({ bytes, licence: licence ?? "", credit: credit ?? "" });
  }
  return errors.length > 0 ? fail(errors) : ok(photographs);
}
