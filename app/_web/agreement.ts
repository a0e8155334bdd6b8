import type { FieldAgreement } from "#core/review/agreement/field-agreement";
import { type ReadOpinions, tellAgreement } from "#usecases/tell-agreement";
import { live } from "./live.ts";

// On the global object, since a bundler may give each route its own copy of this module.
const held = globalThis as typeof globalThis & { countermarkOpinions?: ReadOpinions };
held.countermarkOpinions ??= new Map();
const known = held.countermarkOpinions;

/** How far the reviewers of each field agree; what was read of trails is kept by this process. */
export async function agreement(): Promise<readonly FieldAgreement[]> {
  return tellAgreement((await live()).reviewLists, known);
}
