import { type FieldError, received } from "#core/field-error";
import { LIMITS } from "../field-error.tsx";

/** What the reference reads; the server looks at the bytes, this at the name, so as to say it before the upload. */
const READABLE = /\.(jpe?g|jfif|png|webp|tiff?|avif|gif)$/i;
const MEGABYTE = 1024 * 1024;
export const ACCEPT = "image/jpeg,image/png,image/webp,image/tiff,image/avif,image/gif";

/** The server's first rules, told before anything is sent. */
export function checkFile(file: File): FieldError | null {
  const refuse = (rule: string, what: string): FieldError => ({
    field: "photograph",
    rule,
    received: received(what),
  });
  if (file.size === 0) return refuse("image-empty", file.name);
  if (file.size > LIMITS.limitMb * MEGABYTE)
    return refuse("image-bytes", `${file.name}, ${megabytes(file.size)} MB`);
  const readable = ACCEPT.split(",").includes(file.type) || READABLE.test(file.name);
  return readable ? null : refuse("image-type", file.type === "" ? file.name : `${file.name}, ${file.type}`);
}

const megabytes = (bytes: number): string => (bytes / MEGABYTE).toFixed(1);
