import { parsePublication } from "#core/questions/parse-publication";
import { publishLookUp } from "#usecases/publish-look-up";
import { signedInMember } from "./actor.ts";
import { holdKey } from "./asker-keys.ts";
import { countClient } from "./client-pace.ts";
import { live } from "./live.ts";
import { ownerHash } from "./owner.ts";
import { done, isToken, readWords, refuse } from "./words-form.ts";

/** Publishes a look-up as an open question from a form; its browser is known as the asker's from then on. */
export async function publishQuestion(request: Request, lookUp: string): Promise<Response> {
  if (!isToken(lookUp)) return new Response(null, { status: 404 });
  const page = `/look-ups/${lookUp}/publish`;
  const form = await readWords(request);
  if (!form.ok) return refuse(request, [form.error], {}, page);
  const typed = form.value;
  const publication = parsePublication(typed);
  if (!publication.ok) return refuse(request, publication.error, typed, page);
  const owner = await ownerHash();
  if (owner === null) {
    const error = { field: "look-up", rule: "look-up-unknown", received: lookUp };
    return refuse(request, [error], typed, page);
  }
  const tooSoon = countClient(request, "publish");
  if (tooSoon) return refuse(request, [tooSoon], typed, page);
  const result = await publishLookUp(await live(), {
    lookUp,
    ownerHash: owner,
    publication: publication.value,
    member: await signedInMember(),
  });
  if (!result.ok) return refuse(request, [result.error], typed, page);
  const { id, key } = result.value;
  if (key !== null) await holdKey(id, key, new URL(request.url).protocol === "https:");
  return done(request, { id, key }, `/questions/${id}${key === null ? "" : "?said=published"}`);
}
