/** One thing that was looked at. */
export type Finding = { readonly what: string; readonly ok: boolean; readonly words: string };

export const finding = (what: string, ok: boolean, words: string): Finding => ({ what, ok, words });

/** Runs a check; what it throws is its finding. */
export async function tryTo(what: string, check: () => Promise<string>): Promise<Finding> {
  try {
    return finding(what, true, await check());
  } catch (error) {
    return finding(what, false, error instanceof Error ? error.message : String(error));
  }
}
