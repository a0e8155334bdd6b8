import type { DatedStatement } from "../dating/evidence.ts";
import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Decoded } from "./decoded.ts";
import { RELIABILITY, type Strength } from "./reliability-policy.ts";
import type { Sourced } from "./sourced.ts";
import materials from "./tables/materials.json" with { type: "json" };

/** Families of objects and of what they are made of, in the order in which they are shown. */
export const FAMILIES = [
  ...(["toy", "textile", "ceramic", "glass", "material", "hardware", "paper", "electric"] as const),
];
export type Family = (typeof FAMILIES)[number];

/** A material or a way of making things, and since when it is known. */
export type Feature = Sourced & {
  readonly id: string;
  readonly family: Family;
  readonly kind: "material" | "construction" | "wording";
  readonly feature: string;
  readonly edtf: string;
  readonly strength: Strength;
  readonly reason: string;
  readonly exceptions?: string;
};

/** Says besides which feature it is. */
export type FeatureStatement = DatedStatement & { readonly feature: string };

export const FEATURES = materials as readonly Feature[];

/** Materials and construction: soft windows, for a feature comes into use slowly and goes out of it more slowly still. */
export function decodeMaking(input: {
  readonly features: readonly string[];
}): Result<Decoded<FeatureStatement>, FieldError> {
  if (input.features.length === 0) return fail({ field: "features", rule: "features-empty", received: "" });
  const unknown = input.features.find((id) => !FEATURES.some((each) => each.id === id));
  if (unknown !== undefined)
    return fail({ field: "features", rule: "feature-unknown", received: received(unknown) });
  const chosen = FEATURES.filter(({ id }) => input.features.includes(id));
  return ok({ statements: chosen.map(stateFeature), alternatives: [], notes: [{ is: "not-excluded" }] });
}

function stateFeature(row: Feature): FeatureStatement {
  const { kind, feature, edtf, strength, reason, source, basis, exceptions = "" } = row;
  const reliability = RELIABILITY[basis][strength];
  return {
    ...{ kind, event: "made", edtf, reliability },
    reason: `${feature}: ${reason.charAt(0).toLowerCase()}${reason.slice(1)}`,
    ...{ source, basis, exceptions, feature },
  };
}
