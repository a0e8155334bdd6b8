import { z } from "zod";
import { importReferences } from "#usecases/import-references";
import { live } from "./live.ts";
import { isOperator } from "./operator.ts";
import { streamLines } from "./stream-lines.ts";

const schema = z.object({ folder: z.string().min(1), dryRun: z.boolean(), by: z.string().min(1).max(100) });

/** Imports a folder of this machine on behalf of its operator, while the embedded database is in this process's hands. */
export async function importForOperator(request: Request): Promise<Response> {
  const wired = await live();
  if (!isOperator(request, wired)) return new Response(null, { status: 404 });
  const asked = schema.safeParse(await request.json().catch(() => null));
  if (!asked.success) return Response.json({ error: z.prettifyError(asked.error) }, { status: 422 });
  const { folder, dryRun, by } = asked.data;
  return streamLines(async (send) => {
    const result = await importReferences(wired, await wired.openImportFolder(folder), {
      dryRun,
      by,
      onProgress: (progress) => send({ progress }),
    });
    send({ result });
  });
}
