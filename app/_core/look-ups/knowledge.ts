import { KINDS, type Kind, TECHNIQUES, type Technique } from "../entries/vocabulary.ts";
import { type FieldError, received } from "../field-error.ts";
import { parseLegibleLetters } from "../reading/legible-letters.ts";
import { fail, ok, type Result } from "../result.ts";

/** What the person who asks knows besides the photograph; each part may be missing. */
export type Knowledge = {
  /** Letters as typed, see parseLegibleLetters; empty when none were. */
  readonly letters: string;
  readonly widthMm: number | null;
  readonly heightMm: number | null;
  readonly technique: Technique | null;
  /** Empty when not known. */
  readonly material: string;
  readonly kind: Kind | null;
};

export const NOTHING_KNOWN: Knowledge = {
  letters: "",
  widthMm: null,
  heightMm: null,
  technique: null,
  material: "",
  kind: null,
};

/** The fields in which it is asked for. */
export const KNOWLEDGE_FIELDS = [
  "letters",
  "width_mm",
  "height_mm",
  "technique",
  "material",
  "kind",
] as const;
export type KnowledgeField = (typeof KNOWLEDGE_FIELDS)[number];
export type TypedKnowledge = Readonly<Record<KnowledgeField, string>>;

/** Millimetres; from a goldsmith's punch to the side of a crate. */
const SMALLEST_MM = 0.1;
const LARGEST_MM = 5000;
const LONGEST_MATERIAL = 100;

export function knowsSomething(known: Knowledge): boolean {
  const { letters, widthMm, heightMm, technique, material, kind } = known;
  return (
    letters !== "" ||
    widthMm !== null ||
    heightMm !== null ||
    technique !== null ||
    material !== "" ||
    kind !== null
  );
}

/** Reads the fields as they were typed; the first that breaks a rule is named. */
export function parseKnowledge(typed: TypedKnowledge): Result<Knowledge, FieldError> {
  const letters = parseLegibleLetters(typed.letters);
  if (!letters.ok) return letters;
  const width = parseMillimetres("width_mm", typed.width_mm);
  if (!width.ok) return width;
  const height = parseMillimetres("height_mm", typed.height_mm);
  if (!height.ok) return height;
  const technique = oneOf("technique", TECHNIQUES, typed.technique);
  if (!technique.ok) return technique;
  const kind = oneOf("kind", KINDS, typed.kind);
  if (!kind.ok) return kind;
  const material = typed.material.trim().replace(/\s+/g, " ");
  if (material.length > LONGEST_MATERIAL)
    return fail({
      field: "material",
      rule: "text-length",
      received: received(material),
      params: { longest: LONGEST_MATERIAL },
    });
  return ok({
    letters: letters.value?.typed ?? "",
    widthMm: width.value,
    heightMm: height.value,
    technique: technique.value,
    material,
    kind: kind.value,
  });
}

/** The fields as they are shown again to be changed. */
export function typedOf(known: Knowledge): TypedKnowledge {
  return {
    letters: known.letters,
    width_mm: known.widthMm === null ? "" : String(known.widthMm),
    height_mm: known.heightMm === null ? "" : String(known.heightMm),
    technique: known.technique ?? "",
    material: known.material,
    kind: known.kind ?? "",
  };
}

/** A length in millimetres, with a point or a comma. */
function parseMillimetres(field: KnowledgeField, typed: string): Result<number | null, FieldError> {
  const text = typed.trim();
  if (text === "") return ok(null);
  const number = /^\d+([.,]\d+)?$/.test(text) ? Number(text.replace(",", ".")) : Number.NaN;
  if (number >= SMALLEST_MM && number <= LARGEST_MM) return ok(number);
  return fail({
    field,
    rule: "millimetres",
    received: received(text),
    params: { from: SMALLEST_MM, to: LARGEST_MM },
  });
}

function oneOf<T extends string>(
  field: KnowledgeField,
  allowed: readonly T[],
  typed: string,
): Result<T | null, FieldError> {
  const text = typed.trim();
  if (text === "") return ok(null);
  const found = allowed.find((each) => each === text);
  return found
    ? ok(found)
    : fail({ field, rule: "one-of", received: received(text), params: { allowed: allowed.join(", ") } });
}
