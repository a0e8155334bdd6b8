/**
 * Where to go on after signing in: a path of this site, or the first page for anything else. An address that a
 * browser could read as another site's is none: it begins with one slash, and no backslash, space or unseen sign is
 * in it.
 * Source: WHATWG URL, "relative slash state" (a browser takes a backslash for a slash, and leaves out tabs and line
 * breaks).
 */
export function nextPath(asked: string | undefined): string {
  return asked !== undefined && asked.length <= 1000 && /^\/(?![/\\])[^\\\s\p{C}]*$/u.test(asked)
    ? asked
    : "/";
}
