import type { Actor } from "#core/members/member";

/** Who acts in this request: nobody who is known, as long as there are no accounts. */
export async function actor(): Promise<Actor> {
  return { kind: "reader" };
}
