import { z } from "zod";
import { describeModels } from "#usecases/describe-models";
import { removeOldVectors } from "#usecases/remove-old-vectors";
import { fillModels } from "./fill-models.ts";
import { live } from "./live.ts";
import { isOperator } from "./operator.ts";
import { streamLines } from "./stream-lines.ts";

const schema = z.object({ leaveOut: z.boolean(), removeOld: z.boolean() });

/** Tells the operator which models there are and how far each has come. */
export async function showModels(request: Request): Promise<Response> {
  const wired = await live();
  if (!isOperator(request, wired)) return new Response(null, { status: 404 });
  return Response.json(await describeModels(wired));
}

/** Re-embeds on behalf of the operator, while the embedded database is in this process's hands. */
export async function reembedForOperator(request: Request): Promise<Response> {
  const wired = await live();
  if (!isOperator(request, wired)) return new Response(null, { status: 404 });
  const asked = schema.safeParse(await request.json().catch(() => null));
  if (!asked.success) return Response.json({ error: z.prettifyError(asked.error) }, { status: 422 });
  const { leaveOut, removeOld } = asked.data;
  return streamLines(async (send) => {
    const result = await fillModels(wired, { leaveOut, onProgress: (progress) => send({ progress }) });
    const removed = removeOld ? await removeOldVectors(wired, 0) : [];
    send({ result: { ...result, removed } });
  });
}
