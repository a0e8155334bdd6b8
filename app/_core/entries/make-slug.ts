/** A name for an address made of a title: its letters and digits without accents, joined by hyphens, at most 80. */
export function makeSlug(title: string): string {
  const plain = title
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[\u0300-\u036f]/g, "")
    .replace(/[^a-z0-9]+/g, "-");
  return plain.slice(0, 80).replace(/^-+|-+$/g, "");
}
