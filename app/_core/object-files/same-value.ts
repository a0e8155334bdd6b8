/** Do two plain values of JSON say the same, whatever the order of their names? */
export function sameValue(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [left, right] = [a as Readonly<Record<string, unknown>>, b as Readonly<Record<string, unknown>>];
  const names = Object.keys(left);
  return (
    names.length === Object.keys(right).length &&
    names.every((name) => Object.hasOwn(right, name) && sameValue(left[name], right[name]))
  );
}
