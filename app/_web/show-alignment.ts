import { alignPhotographs } from "#usecases/align-photographs";
import { live } from "./live.ts";
import { unexpected } from "./unexpected.ts";

/**
 * How a look-up's photograph lies over one of an entry's, as JSON; whoever may read the look-up may ask.
 * @param query with `entry`, its slug, `photograph`, its id, and `asked`, the look-up's photograph from 1, which it is
 * when left out
 */
export async function showAlignment(lookUp: string, query: URLSearchParams): Promise<Response> {
  const headers = { "cache-control": "no-store" };
  try {
    const wired = await live();
    if (wired.queue.isFull) {
      const error = { field: "request", rule: "busy", received: String(wired.queue.waiting) };
      return Response.json({ error }, { status: 503, headers: { ...headers, "retry-after": "5" } });
    }
    const asked = {
      lookUp,
      asked: Number(query.get("asked") ?? 1),
      entry: query.get("entry") ?? "",
      photograph: query.get("photograph") ?? "",
    };
    const alignment = await wired.queue.run(() => alignPhotographs(wired, asked));
    if (!alignment) return new Response(null, { status: 404, headers });
    return Response.json(alignment, { headers });
  } catch (error) {
    return Response.json({ error: unexpected(error) }, { status: 500, headers });
  }
}
