import { type FieldError, received } from "#core/field-error";
import { checkPhotographCount, parseMarkNumber } from "#core/look-ups/asked-photographs";
import { isSha256 } from "#core/photographs/limits";
import type { Region } from "#core/photographs/region";
import { fail, ok, type Result } from "#core/result";
import type { PhotographToLookUp } from "#usecases/look-up/read-photographs";
import type { Live } from "./live.ts";

/** Fields that say something of one photograph each, in the order of the photographs. */
const REGION_FIELDS = ["x", "y", "width", "height", "turn"] as const;
const OF_EACH = ["mark", ...REGION_FIELDS] as const;

/** A photograph that a form holds or names, before it is read. */
type Named = {
  /** The mark it shows when the field "mark" does not say. */
  readonly mark: "1" | "2";
  bytes(): Promise<Result<Uint8Array, FieldError>>;
};

/**
 * The photographs of a form, in this order: those looked up before (`again`), those to try (`try`), files of the first
 * mark (`photograph`) and of a second (`other_photograph`). The n-th value of `mark`, `x`, `y`, `width`, `height` and
 * `turn` belongs to the n-th of them; an empty one, or none, leaves it open.
 */
export async function readLookUpPhotographs(
  form: FormData,
  live: Live,
  ownerHash: string,
): Promise<Result<readonly PhotographToLookUp[], FieldError>> {
  const named = [
    ...textsOf(form, "again").map((sha256) => looked(live, sha256, ownerHash)),
    ...textsOf(form, "try").map((name) => toTry(live, name)),
    ...filesOf(form, "photograph").map((file) => sent(file, "1")),
    ...filesOf(form, "other_photograph").map((file) => sent(file, "2")),
  ];
  const count = checkPhotographCount(named.length);
  if (!count.ok) return count;
  for (const field of OF_EACH) {
    const given = form.getAll(field).length;
    if (given > named.length)
      return fail({
        field,
        rule: "one-for-each",
        received: String(given),
        params: { photographs: named.length },
      });
  }
  const photographs: PhotographToLookUp[] = [];
  for (const [i, each] of named.entries()) {
    const mark = parseMarkNumber(textAt(form, "mark", i) || each.mark);
    if (!mark.ok) return mark;
    const region = readRegion(form, i);
    if (!region.ok) return region;
    const bytes = await each.bytes();
    if (!bytes.ok) return bytes;
    photographs.push({ bytes: bytes.value, region: region.value, mark: mark.value });
  }
  return ok(photographs);
}

const textsOf = (form: FormData, field: string): string[] =>
  form.getAll(field).filter((value): value is string => typeof value === "string" && value !== "");

/** A file field that was left empty is sent all the same, without a name. */
const filesOf = (form: FormData, field: string): File[] =>
  form
    .getAll(field)
    .filter((value): value is File => value instanceof File && (value.size > 0 || value.name !== ""));

function textAt(form: FormData, field: string, index: number): string {
  const value = form.getAll(field)[index];
  return typeof value === "string" ? value.trim() : "";
}

const sent = (file: File, mark: Named["mark"]): Named => ({
  mark,
  bytes: async () => ok(new Uint8Array(await file.arrayBuffer())),
});

const toTry = (live: Live, name: string): Named => ({
  mark: "1",
  async bytes() {
    const bytes = await live.photographsToTry.bytes(name);
    return bytes ? ok(bytes) : fail({ field: "try", rule: "try-unknown", received: received(name) });
  },
});

const looked = (live: Live, sha256: string, ownerHash: string): Named => ({
  mark: "1",
  async bytes() {
    const own = isSha256(sha256) && (await live.lookUps.imageOwnedBy(sha256, ownerHash));
    const bytes = own ? await live.blobs.get(sha256) : null;
    return bytes ? ok(bytes) : fail({ field: "again", rule: "again-unknown", received: received(sha256) });
  },
});

function readRegion(form: FormData, index: number): Result<Region | null, FieldError> {
  const texts = REGION_FIELDS.map((name) => [name, textAt(form, name, index)] as const);
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
