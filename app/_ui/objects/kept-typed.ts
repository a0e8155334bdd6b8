/** Fields that a form carries for itself; the page gives them anew. */
const OWN = new Set(["id", "version", "page", "done"]);

const nameOf = (file: string, form: string): string => `countermark-object-${file}-${form}`;

/** Keeps what is typed in this browser, until it has arrived; a browser that keeps nothing is no hindrance. */
export function keepTyped(file: string, name: string, form: HTMLFormElement): void {
  const texts = [...new FormData(form).entries()].filter(
    ([field, value]) => typeof value === "string" && value !== "" && !OWN.has(field),
  );
  try {
    localStorage.setItem(nameOf(file, name), JSON.stringify(texts));
  } catch {
    // It is full, or switched off.
  }
}

export function forgetTyped(file: string, name: string): void {
  try {
    localStorage.removeItem(nameOf(file, name));
  } catch {
    // It is switched off, and so holds nothing.
  }
}

/** Fills a form with what did not arrive last time. @returns whether there was anything that it does not say */
export function putTypedBack(file: string, name: string, form: HTMLFormElement): boolean {
  let texts: unknown;
  try {
    texts = JSON.parse(localStorage.getItem(nameOf(file, name)) ?? "null");
  } catch {
    return false;
  }
  if (!Array.isArray(texts)) return false;
  let filled = false;
  for (const [field, text] of texts as readonly (readonly [string, string])[]) {
    for (const control of controlsOf(form, field)) filled = fill(control, text) || filled;
  }
  return filled;
}

const controlsOf = (form: HTMLFormElement, field: string): readonly Element[] =>
  [...form.elements].filter((each) => each.getAttribute("name") === field);

function fill(control: Element, text: string): boolean {
  if (control instanceof HTMLInputElement && (control.type === "radio" || control.type === "checkbox")) {
    if (control.value !== text || control.checked) return false;
    control.checked = true;
    return true;
  }
  const takes =
    control instanceof HTMLTextAreaElement ||
    control instanceof HTMLSelectElement ||
    (control instanceof HTMLInputElement && control.type !== "file" && control.type !== "hidden");
  if (!takes || control.value === text) return false;
  control.value = text;
  return true;
}
