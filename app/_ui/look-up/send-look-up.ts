import type { FieldError } from "#core/field-error";
import type { Stage } from "#core/look-ups/look-up";

/** What is known of a look-up on its way: how much of the photograph has left, and the stage it has reached. */
export type Report = { readonly uploaded: number } | { readonly stage: Stage };
export type Answer = { readonly id: string } | { readonly error: FieldError };

type Line = { readonly stage?: Stage; readonly id?: string; readonly error?: FieldError };

/**
 * Sends a look-up and tells of its stages as they are passed. An XMLHttpRequest, since fetch cannot say how much
 * of an upload has left.
 * @param onReport called with the part uploaded, 0 to 1, then with each stage
 * @returns the look-up's id, or what was wrong; rule `unreachable` when no answer came
 * @throws DOMException "AbortError" when `signal` aborts
 */
export function sendLookUp(
  form: FormData,
  onReport: (report: Report) => void,
  signal: AbortSignal,
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    let read = 0;
    let answer: Answer | null = null;

    function readLines(all: boolean) {
      const end = all ? request.responseText.length : request.responseText.lastIndexOf("\n") + 1;
      const lines = request.responseText.slice(read, end).split("\n");
      read = Math.max(read, end);
      for (const line of lines.map(parseLine)) {
        if (line?.error) answer = { error: line.error };
        else if (line?.id !== undefined) answer = { id: line.id };
        else if (line?.stage) onReport({ stage: line.stage });
      }
    }

    request.open("POST", "/api/look-ups");
    request.setRequestHeader("Accept", "application/x-ndjson");
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) onReport({ uploaded: event.loaded / event.total });
    };
    request.onprogress = () => readLines(false);
    request.onload = () => {
      readLines(true);
      resolve(
        answer ?? { error: { field: "photograph", rule: "unexpected", received: `HTTP ${request.status}` } },
      );
    };
    request.onerror = () => resolve({ error: { field: "photograph", rule: "unreachable", received: "" } });
    request.onabort = () => reject(new DOMException("The look-up was cancelled.", "AbortError"));
    signal.addEventListener("abort", () => request.abort(), { once: true });
    request.send(form);
  });
}

function parseLine(text: string): Line | null {
  if (text.trim() === "") return null;
  try {
    return JSON.parse(text) as Line;
  } catch {
    // An answer from something between us and the server; the status says more than its text.
    return null;
  }
}
