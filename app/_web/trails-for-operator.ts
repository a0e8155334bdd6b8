import { z } from "zod";
import { verifyTrails } from "#usecases/verify-trails";
import { live } from "./live.ts";
import { isOperator } from "./operator.ts";
import { streamLines } from "./stream-lines.ts";

const schema = z.object({ entry: z.string().min(1).max(100).nullable() });

/** Checks trails on behalf of the operator, while the embedded database is in this process's hands. */
export async function verifyForOperator(request: Request): Promise<Response> {
  const wired = await live();
  if (!isOperator(request, wired)) return new Response(null, { status: 404 });
  const asked = schema.safeParse(await request.json().catch(() => null));
  if (!asked.success) return Response.json({ error: z.prettifyError(asked.error) }, { status: 422 });
  return streamLines(async (send) => {
    send({ result: await verifyTrails(wired, asked.data.entry) });
  });
}
