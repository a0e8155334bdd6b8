/** What keys, tokens and passwords look like in text. */
const SECRETS = [
  /-----BEGIN (?:[A-Z]+ )?PRIVATE KEY-----/,
  /\b(?:AKIA|ASIA)[0-9A-Z]{16}\b/,
  /\bgh[pousr]_[A-Za-z0-9]{36}\b/,
  /\bxox[abps]-[A-Za-z0-9-]{10,}/,
  /\b(?:secret|password|token|api[_-]?key)\b["']?\s*[:=]\s*["'][A-Za-z0-9+/_-]{20,}["']/i,
  // A password in an address; these three words stand for one in examples.
  /\b\w+:\/\/[^\s:@/"'`$<]+:(?!(?:secret|password|\.\.\.)@)[^\s:@/"'`$<]+@[^\s/]+/,
];

/** @returns the kinds of secret that a text seems to hold, each as the pattern that found it */
export function secretsIn(text: string): readonly string[] {
  return SECRETS.filter((secret) => secret.test(text)).map((secret) => secret.source);
}
