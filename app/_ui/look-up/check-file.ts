import { type FieldError, received } from "#core/field-error";
import { LIMITS } from "../field-error.tsx";
import { beginsLikeImage, IMAGE_START } from "./image-start.ts";

const MEGABYTE = 1024 * 1024;
export const ACCEPT = "image/jpeg,image/png,image/webp,image/tiff,image/avif,image/gif";

/** The server's first rules, told before anything is sent. */
export async function checkFile(file: File): Promise<FieldError | null> {
  const refuse = (rule: string, what: string): FieldError => ({
    field: "photograph",
    rule,
    received: received(what),
  });
  if (file.size === 0) return refuse("image-empty", file.name);
  if (file.size > LIMITS.limitMb * MEGABYTE)
    return refuse("image-bytes", `${file.name}, ${megabytes(file.size)} MB`);
  const start = new Uint8Array(await file.slice(0, IMAGE_START).arrayBuffer());
  return beginsLikeImage(start) ? null : refuse("image-type", file.name);
}

const megabytes = (bytes: number): string => (bytes / MEGABYTE).toFixed(1);
