import type { FieldError } from "#core/field-error";
import type { Pending } from "./outbox.ts";

/** What came of sending a form. */
export type Outcome =
  | { readonly is: "done" }
  | { readonly is: "unreachable" }
  | { readonly is: "signed out" }
  | { readonly is: "refused"; readonly errors: readonly FieldError[] };

/** An upload that has said nothing for so long is given up and tried again. */
const SILENCE_MS = 60_000;

/** @param onProgress the part that has left this browser, 0 to 1 */
export function sendPending(
  { action, parts }: Pick<Pending, "action" | "parts">,
  onProgress: (part: number) => void,
): Promise<Outcome> {
  const form = new FormData();
  for (const [name, value] of parts) form.append(name, value);
  return new Promise((resolve) => {
    // Only this way a browser says how much of a form has left it.
    const request = new XMLHttpRequest();
    let silence: ReturnType<typeof setTimeout> | undefined;
    const listen = () => {
      clearTimeout(silence);
      silence = setTimeout(() => request.abort(), SILENCE_MS);
    };
    const end = (outcome: Outcome) => {
      clearTimeout(silence);
      resolve(outcome);
    };
    request.open("POST", action);
    request.setRequestHeader("accept", "application/json");
    request.responseType = "json";
    request.upload.onprogress = ({ loaded, total }) => {
      listen();
      onProgress(total > 0 ? loaded / total : 0);
    };
    request.onload = () => end(outcomeOf(request.status, request.response));
    request.onerror = () => end({ is: "unreachable" });
    request.onabort = () => end({ is: "unreachable" });
    listen();
    request.send(form);
  });
}

function outcomeOf(status: number, answer: { errors?: readonly FieldError[] } | null): Outcome {
  if (status < 300) return { is: "done" };
  if (status === 401) return { is: "signed out" };
  if (status >= 500 || status === 429) return { is: "unreachable" };
  return { is: "refused", errors: answer?.errors ?? [] };
}
