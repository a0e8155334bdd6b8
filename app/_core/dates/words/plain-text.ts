/** One way of writing what can be written in several: small letters, one kind of hyphen, no year's "A.D.". */
export function plainText(text: string): string {
  return text
    .toLowerCase()
    .replace(/[‐‑‒–—−]/g, "-")
    .replace(/[’‘`´]/g, "'")
    .replace(/\bb\.?\s?c\.?(?:\s?e\b\.?)?(?=\W|$)/g, "bce")
    .replace(/\b(?:a\.\s?d\.|ad|c\.\s?e\.|ce)(?=\s|$)/g, " ")
    .replace(/^\s*(?:dated|made|used|in(?! or )|on|at|the year|some time|sometime)\s+(?:in\s+)?/, "")
    .replace(/\bthe\s+/g, "")
    .replace(/\s+/g, " ")
    .trim()
    .replace(/[,;.]$/, "")
    .trim();
}
