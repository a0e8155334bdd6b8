import type { FieldError } from "#core/field-error";

/**
 * Sends one photograph to a draft.
 * @param onProgress the part that has left this browser, 0 to 1
 * @returns why it was refused; null when it was taken
 */
export function sendPhotograph(
  draft: string,
  file: File,
  onProgress: (part: number) => void,
): Promise<FieldError | null> {
  const form = new FormData();
  form.set("photograph", file);
  const unreachable: FieldError = { field: "photograph", rule: "unreachable", received: file.name };
  return new Promise((resolve) => {
    // Only this way a browser says how much of a form has left it.
    const request = new XMLHttpRequest();
    request.open("POST", `/api/drafts/${draft}/photographs`);
    request.setRequestHeader("accept", "application/json");
    request.responseType = "json";
    request.upload.onprogress = ({ loaded, total }) => onProgress(total > 0 ? loaded / total : 0);
    request.onload = () => {
      if (request.status < 300) return resolve(null);
      const answer = request.response as { error?: FieldError } | null;
      resolve(answer?.error ?? unreachable);
    };
    request.onerror = () => resolve(unreachable);
    request.send(form);
  });
}
