import { z } from "zod";
import { appointByHost } from "#usecases/appoint-by-host";
import { live } from "./live.ts";
import { isOperator } from "./operator.ts";

const schema = z.object({ email: z.string().max(254), role: z.string().max(20) });

/** Appoints on behalf of this host's operator, while the embedded database is in this process's hands. */
export async function appointForOperator(request: Request): Promise<Response> {
  const wired = await live();
  if (!isOperator(request, wired)) return new Response(null, { status: 404 });
  const asked = schema.safeParse(await request.json().catch(() => null));
  if (!asked.success) return Response.json({ error: z.prettifyError(asked.error) }, { status: 422 });
  return Response.json(await appointByHost(wired, asked.data));
}
