import { type FieldError, received } from "#core/field-error";
import {
  KNOWLEDGE_FIELDS,
  type Knowledge,
  parseKnowledge,
  type TypedKnowledge,
} from "#core/look-ups/knowledge";
import { IMAGE_LIMITS, isSha256 } from "#core/photographs/limits";
import type { Region } from "#core/photographs/region";
import { fail, ok, type Result } from "#core/result";
import type { Live } from "./live.ts";
import { readForm } from "./read-form.ts";

export type LookUpForm = {
  readonly bytes: Uint8Array;
  readonly region: Region | null;
  readonly known: Knowledge;
};

/** Where a plain form came from and what was typed into it, so that a refusal can lead back to it. */
export type Sender = { readonly lookUp: string | null; readonly typed: TypedKnowledge };

/**
 * Reads the form of a look-up: the photograph itself, the name of one to try, or one's own earlier photograph; the
 * region, when it was drawn; and what is known besides.
 */
export async function readLookUpForm(
  request: Request,
  live: Live,
  ownerHash: string,
): Promise<{ readonly form: Result<LookUpForm, FieldError>; readonly sender: Sender | null }> {
  const form = await readForm(request, IMAGE_LIMITS.bytes);
  if (!form.ok) return { form, sender: null };
  const typed = Object.fromEntries(
    KNOWLEDGE_FIELDS.map((name) => [name, textOf(form.value, name)]),
  ) as TypedKnowledge;
  const from = textOf(form.value, "from");
  const sender = { lookUp: /^[\w-]{1,64}$/.test(from) ? from : null, typed };
  return { form: await readParts(form.value, typed, live, ownerHash), sender };
}

async function readParts(
  form: FormData,
  typed: TypedKnowledge,
  live: Live,
  ownerHash: string,
): Promise<Result<LookUpForm, FieldError>> {
  const known = parseKnowledge(typed);
  if (!known.ok) return known;
  const region = readRegion(form);
  if (!region.ok) return region;
  const bytes = await readBytes(form, live, ownerHash);
  return bytes.ok ? ok({ bytes: bytes.value, region: region.value, known: known.value }) : bytes;
}

function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
}

async function readBytes(
  form: FormData,
  live: Live,
  ownerHash: string,
): Promise<Result<Uint8Array, FieldError>> {
  const file = form.get("photograph");
  if (file instanceof File && (file.size > 0 || file.name !== ""))
    return ok(new Uint8Array(await file.arrayBuffer()));
  const name = form.get("try");
  if (typeof name === "string" && name !== "") {
    const bytes = await live.photographsToTry.bytes(name);
    return bytes ? ok(bytes) : fail({ field: "try", rule: "try-unknown", received: received(name) });
  }
  const again = form.get("again");
  if (typeof again === "string" && again !== "") {
    const own = isSha256(again) && (await live.lookUps.imageOwnedBy(again, ownerHash));
    const bytes = own ? await live.blobs.get(again) : null;
    return bytes ? ok(bytes) : fail({ field: "again", rule: "again-unknown", received: received(again) });
  }
  return fail({ field: "photograph", rule: "image-missing", received: "" });
}

const PARTS = ["x", "y", "width", "height"] as const;

function readRegion(form: FormData): Result<Region | null, FieldError> {
  const texts = [...PARTS, "turn" as const].map(
    (name) => [name, String(form.get(name) ?? "").trim()] as const,
  );
  if (texts.every(([, text]) => text === "")) return ok(null);
  const numbers: Record<string, number> = {};
  for (const [name, text] of texts) {
    const number = text === "" ? (name === "turn" ? 0 : Number.NaN) : Number(text);
    if (!Number.isFinite(number)) return fail({ field: name, rule: "number", received: received(text) });
    numbers[name] = number;
  }
  const { x = 0, y = 0, width = 0, height = 0, turn = 0 } = numbers;
  return ok({ x, y, width, height, turn });
}
