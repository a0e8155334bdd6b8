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
    const asked = {
      lookUp,
      asked: Number(query.get("asked") ?? 1),
      entry: query.get("entry") ?? "",
      photograph: query.get("photograph") ?? "",
    };
    const alignment = await alignPhotographs(wired, asked);
    if (!alignment.ok)
      return Response.json(
        { error: alignment.error },
        { status: 503, headers: { ...headers, "retry-after": "5" } },
      );
    if (!alignment.value) return new Response(null, { status: 404, headers });
    return Response.json(alignment.value, { headers });
  } catch (error) {
    return Response.json({ error: unexpected(error) }, { status: 500, headers });
  }
}
