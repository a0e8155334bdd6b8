import { holdKey, isKey } from "./asker-keys.ts";
import { keepForm } from "./kept-forms.ts";
import { live } from "./live.ts";
import { redirect } from "./look-up-answer.ts";
import { unexpected } from "./unexpected.ts";
import { isToken } from "./words-form.ts";

/** The private address of a question: whoever opens it with the right key is known as its asker in this browser. */
export async function takeAskerKey(request: Request, id: string, key: string): Promise<Response> {
  if (!isToken(id)) return new Response(null, { status: 404 });
  try {
    const { questions, keys } = await live();
    const kept = isKey(key) ? await questions.find(id) : null;
    if (kept && keys.opens(key, kept.keyHash)) {
      await holdKey(id, key, new URL(request.url).protocol === "https:");
      return redirect(`/questions/${id}?said=known`);
    }
    const error = { field: "key", rule: "key-wrong", received: "another" };
    return redirect(`/questions/${id}?form=${keepForm({ errors: [error], typed: {} })}`);
  } catch (error) {
    return Response.json({ error: unexpected(error) }, { status: 500 });
  }
}
