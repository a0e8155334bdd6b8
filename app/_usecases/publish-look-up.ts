import type { FieldError } from "#core/field-error";
import type { KeptLookUp } from "#core/look-ups/kept-look-up";
import { decide } from "#core/questions/decide";
import { UNASKED } from "#core/questions/evolve";
import type { QuestionPhotograph } from "#core/questions/kept-question";
import type { Publication } from "#core/questions/parse-publication";
import { fail, ok, type Result } from "#core/result";
import type { Clock, Keys, LookUps, Questions, Randomness } from "./ports.ts";

type Needs = {
  readonly lookUps: LookUps;
  readonly questions: Questions;
  readonly keys: Keys;
  readonly randomness: Randomness;
  readonly clock: Clock;
};

/**
 * The owner of a look-up publishes it as an open question. Publishing it twice gives the question that is there.
 * @returns the question's id, and the key by which its asker is known; no key when it was published already
 */
export async function publishLookUp(
  needs: Needs,
  asked: {
    readonly lookUp: string;
    readonly ownerHash: string;
    readonly publication: Publication;
    readonly member?: string | null;
  },
): Promise<Result<{ readonly id: string; readonly key: string | null }, FieldError>> {
  const now = needs.clock.now();
  const kept = await needs.lookUps.find(asked.lookUp);
  if (kept?.ownerHash !== asked.ownerHash || (kept.expiresAt !== null && kept.expiresAt <= now))
    return fail({ field: "look-up", rule: "look-up-unknown", received: asked.lookUp });
  const { published } = asked.publication;
  const decided = decide(UNASKED, { type: "publish", at: now.toISOString(), ...published });
  if (!decided.ok) return decided;
  const { key, hash } = needs.keys.make();
  const id = needs.randomness.token();
  const there = await needs.questions.publish({
    id,
    keyHash: hash,
    askerMember: asked.member ?? null,
    lookUp: kept.id,
    asked: kept.asked,
    photographs: photographsOf(kept, asked.publication),
    events: decided.value,
  });
  return ok(there === null ? { id, key } : { id: there, key: null });
}

/** Every photograph of the look-up, with the terms on which the asker shows it. */
const photographsOf = (
  { photographs }: KeptLookUp,
  { licence, credit }: Publication,
): readonly QuestionPhotograph[] =>
  photographs.map(({ sha256, width, height, region }) => ({
    sha256,
    width,
    height,
    region,
    licence,
    credit,
  }));
