/** Texts of a form by the names of their fields. */
export type Kept = Readonly<Record<string, string>>;

const nameOf = (draft: string): string => `countermark-draft-${draft}`;

/** Keeps a form in this browser until it is saved; a browser that keeps nothing is no hindrance. */
export function keep(draft: string, texts: Kept): void {
  try {
    localStorage.setItem(nameOf(draft), JSON.stringify(texts));
  } catch {
    // It is full, or switched off.
  }
}

export function forget(draft: string): void {
  try {
    localStorage.removeItem(nameOf(draft));
  } catch {
    // It is switched off, and so holds nothing.
  }
}

/** What could not be saved last time; null when everything was. */
export function kept(draft: string): Kept | null {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(nameOf(draft)) ?? "null");
    return found !== null && typeof found === "object" ? (found as Kept) : null;
  } catch {
    return null;
  }
}
