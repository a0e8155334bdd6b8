import type { FieldError } from "#core/field-error";
import { fail, ok, type Result } from "#core/result";

/** Room for the parts of a form that are not photographs. */
const OVERHEAD = 64 * 1024;

/**
 * Reads a multipart form without ever holding more than the limit, whatever its headers claim.
 * @param limit bytes of all photographs together
 * @param rule what a form that is larger breaks
 */
export async function readForm(
  request: Request,
  limit: number,
  rule: "image-bytes" | "images-together" = "image-bytes",
): Promise<Result<FormData, FieldError>> {
  const tooLarge = (bytes: number): Result<FormData, FieldError> =>
    fail({
      field: "photograph",
      rule,
      received: `${(bytes / 1024 / 1024).toFixed(1)} MB`,
      params: { limitMb: limit / 1024 / 1024 },
    });
  const claimed = Number(request.headers.get("content-length") ?? "0");
  if (claimed > limit + OVERHEAD) return tooLarge(claimed);
  const chunks: Uint8Array[] = [];
  let size = 0;
  try {
    for await (const chunk of (request.body ?? []) as unknown as AsyncIterable<Uint8Array>) {
      size += chunk.byteLength;
      if (size > limit + OVERHEAD) return tooLarge(size);
      chunks.push(chunk);
    }
  } catch {
    // The line broke, which is no fault of this host; whoever sent it will send it again.
    return fail({ field: "request", rule: "broke-off", received: String(size) });
  }
  const type = request.headers.get("content-type") ?? "";
  try {
    const whole = new Response(Buffer.concat(chunks), { headers: { "content-type": type } });
    return ok(await whole.formData());
  } catch {
    return fail({ field: "request", rule: "form", received: type });
  }
}
