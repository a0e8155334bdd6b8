import type { Typed } from "#core/questions/typed-text";

export type Paths = { readonly refused: string; readonly done: string };

/** Where a form leads back to: paths of this host that it names itself, else the page of its entry. */
export function pathsIn(typed: Typed, slug: string, act: string): Paths {
  const entry = `/entries/${slug}`;
  return { refused: pathOr(typed.page, entry), done: `${pathOr(typed.done, entry)}?said=${act}` };
}

/** A path and nothing else: no host, no way up, no query. */
const pathOr = (text: string | undefined, otherwise: string): string =>
  text !== undefined && /^(\/[\w-]+)+$/.test(text) ? text : otherwise;
